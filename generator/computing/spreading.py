"""How sure a number is: what each input moves it by over its range, and how far all of them together."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from generator.computing.workbook import Workbook

At = Callable[[Iterable[tuple[str, float]]], float | None]
"""A result with some inputs changed; None where it is refused."""


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
class Likely:
    """Where a number most likely lies, and what moves it, the most first."""

    low: float
    high: float
    moves: tuple[Move, ...]


def likely(
    workbook: Workbook,
    settings: Mapping[str, float | str],
    name: str,
    ranges: Mapping[str, tuple[float, float]],
) -> Likely | None:
    """Independent doubts together: the root of the sum of the squares of the moves, up and down apart.

    None where the result is refused or no number as things stand. Source: JCGM 100:2008 (GUM), 5.1.2, with finite
    steps as in 5.1.3 note 2, from memory.
    """
    at = _results(workbook, settings, name)
    middle = at(())
    if middle is None:
        return None
    moves = _moves(at, middle, ranges, workbook.rests_on(name))
    ends = [[end for end in (move.low, move.high, middle) if end is not None] for move in moves]
    down = math.hypot(*(middle - min(each) for each in ends))
    up = math.hypot(*(max(each) - middle for each in ends))
    return Likely(middle - down, middle + up, tuple(moves))


def _results(workbook: Workbook, settings: Mapping[str, float | str], name: str) -> At:
    needed = workbook.rests_on(name)

    def at(changes: Iterable[tuple[str, float]]) -> float | None:
        value = workbook.compute({**settings, **dict(changes)}, needed).values.get(name)
        return value if isinstance(value, float) else None

    return at


def _moves(at: At, middle: float, ranges: Mapping[str, tuple[float, float]], needed: frozenset[str]) -> list[Move]:
    inputs = [each for each in ranges if each in needed]
    moves = [Move(each, *(at([(each, end)]) for end in ranges[each])) for each in inputs]
    return sorted((move for move in moves if move.size(middle)), key=lambda move: -move.size(middle))
