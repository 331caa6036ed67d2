"""Quantities one by one: a family over a set becomes one quantity for each member."""

from __future__ import annotations

from dataclasses import dataclass

from generator.computing.findings import Findings
from generator.formula import Measured, Word
from generator.model.library import Library
from generator.model.measure import Measure
from generator.model.quantity import Quantity
from generator.units import UnitBook


@dataclass(frozen=True)
class Item:
    """A quantity with a value of its own. `name` is the id of its entry, which members of a family share."""

    id: str
    name: str
    member: str
    quantity: Quantity
    measure: Measure
    kind: Measured | Word


def write_out(library: Library, book: UnitBook, findings: Findings) -> dict[str, Item]:
    """Every quantity by id. Finds ids that come out twice."""
    items: dict[str, Item] = {}
    for name, quantity in library.quantities.items():
        measure = library.measures[quantity.measure]
        kind = _kind(library, measure, book)
        members = tuple(library.sets[quantity.each].members) if quantity.each else ("",)
        for member in members:
            identifier = f"{name}_{member}" if member else name
            if identifier in items or identifier in library.choices:
                fault = f"`{identifier}` is the id of something else too"
                findings.add("quantities", name, (), fault, "give one of the two another id")
            items[identifier] = Item(identifier, name, member, quantity, measure, kind)
    return items


def _kind(library: Library, measure: Measure, book: UnitBook) -> Measured | Word:
    if measure.form == "member":
        return Word(frozenset(member for entry in library.sets.values() for member in entry.members))
    return Measured(book.dimension(measure.unit), measure.point)
