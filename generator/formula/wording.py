"""What a printed working needs to know beside the formula: titles, units, words, and how a number is written."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from generator.units import UnitBook, plainly
from generator.units.signs import unit_sign

WORDS = (
    *("if", "otherwise", "and", "or", "not", "is", "is not", "in {unit}", "smallest of", "largest of"),
    *("rounded up", "rounded down", "rounded", "where", "from {low} to {high}"),
    *("name of the smallest of", "name of the largest of", "share of {member} in the fastest split"),
)
"""Words that printed workings bring themselves, for translators."""


@dataclass(frozen=True)
class Wording:
    """Titles are looked up in the reader's language already; `translate` is for the words of the language itself."""

    book: UnitBook
    title: Callable[[str], str]
    """Of a quantity, a choice, a function or a table, by id."""
    option: Callable[[str, str], str]
    """The title of an option, by the id of its choice and its own; of a member of a set where the first is empty."""
    unit: Callable[[str], str]
    """The SI unit text of a quantity."""
    values: Mapping[str, float | str]
    """SI values and options; refused quantities are left out."""
    translate: Callable[[str], str] = str
    write: Callable[[float], str] = plainly

    def sign_of(self, unit: str, one: bool = True) -> str:
        """A unit text as a person writes it, behind the number one or behind others."""
        entry = self.book.units[unit]
        return self.translate(entry.plural) if entry.plural and not one else unit_sign(unit, self.book, self.translate)
