"""How sure a number is: what each input moves it by over its range, and how far all of them together."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from generator.computing.workbook import Workbook

_MOST_AT_ONCE = 10
"""Inputs whose ends are tried in every combination: 1024 days."""


@dataclass(frozen=True)
class Move:
    """What a number is with one input at either end of its range; None where it is refused there."""

    input: str
    low: float | None
    high: float | None

    def size(self, middle: float) -> float:
        """How far the number goes from where it stands. Finite steps, because rounding up makes numbers jump."""
        ends = [end for end in (self.low, self.high, middle) if end is not None]
        return max(ends) - min(ends)


@dataclass(frozen=True)
class Spread:
    """The moves, the largest first, and the least and greatest value over the corners of the ranges."""

    moves: tuple[Move, ...]
    least: float
    most: float


def spread(
    workbook: Workbook,
    settings: Mapping[str, float | str],
    name: str,
    ranges: Mapping[str, tuple[float, float]],
) -> Spread | None:
    """The spread of one result over ranges of inputs in SI; None where it is refused or no number as things stand."""
    needed = workbook.rests_on(name)

    def at(changes: Iterable[tuple[str, float]]) -> float | None:
        value = workbook.compute({**settings, **dict(changes)}, needed).values.get(name)
        return value if isinstance(value, float) else None

    middle = at(())
    if middle is None:
        return None
    inputs = [each for each in ranges if each in needed]
    moves = [Move(each, *(at([(each, end)]) for end in ranges[each])) for each in inputs]
    moves = sorted((move for move in moves if move.size(middle)), key=lambda move: -move.size(middle))
    first = [move.input for move in moves[:_MOST_AT_ONCE]]
    corners = (at(zip(first, ends, strict=True)) for ends in itertools.product(*(ranges[each] for each in first)))
    reached = [middle, *(value for value in corners if value is not None)]
    return Spread(tuple(moves), min(reached), max(reached))
