"""What a plan comes to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

NOT_FINITE = "not_finite"
NOT_FINITE_SENTENCE = (
    "There is no number for these values: something is divided by zero, or lies outside what is known."
)


@dataclass(frozen=True)
class Refusal:
    """Why a quantity has no value."""

    sentence: str
    """What the person reads, with places for quantities in braces."""
    input: str | None = None
    """The input to look at, where content names one."""
    because: str | None = None
    """The quantity that is refused itself, where this one only uses it."""
    key: str = NOT_FINITE
    """`<quantity>:<number of the requirement>`, or `not_finite`; phones find the sentence in their language by it."""


@dataclass(frozen=True)
class Day:
    """Every number of one plan: SI values and options by id, what is refused, and the watches that hold."""

    values: Mapping[str, float | str]
    refused: Mapping[str, Refusal]
    alerts: tuple[str, ...]
