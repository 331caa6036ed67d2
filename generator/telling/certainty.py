"""How sure a number is, in the edition's words."""

from __future__ import annotations

from dataclasses import dataclass

from generator.telling.edition import Edition
from generator.telling.figures import Figures

_NAMED = 3
"""How many of the things that move a number are named."""


@dataclass(frozen=True)
class Certainty:
    """Where a number most likely lies, as shown, and the titles of what moves it most, the most first."""

    low: str
    high: str
    moved_by: tuple[str, ...]


def tell_certainty(edition: Edition, figures: Figures, identifier: str) -> Certainty | None:
    """None where content does not ask for it, or the number is refused."""
    item = figures.items[identifier]
    found = edition.workbook.how_sure(edition.settings, identifier) if item.quantity.how_sure else None
    if found is None:
        return None
    low, high = (figures.write(end, item) for end in (found.low, found.high))
    return Certainty(low, high, tuple(figures.title_of(move.input) for move in found.moves[:_NAMED]))
