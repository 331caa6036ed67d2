"""What a part of a formula gives: a measured value, a truth, or a word."""

from __future__ import annotations

from dataclasses import dataclass

from generator.units.dimension import PLAIN, Dimension


@dataclass(frozen=True)
class Measured:
    """A number of some dimension. A point, as a thermometer reads it, has a zero of its own; a difference has not."""

    dimension: Dimension = PLAIN
    point: bool = False


@dataclass(frozen=True)
class Truth:
    """True or false."""


@dataclass(frozen=True)
class Word:
    """One of a few ids: an option of a choice, or a member of a set."""

    options: frozenset[str]


Kind = Measured | Truth | Word
BARE = Measured()
TRUTH = Truth()
