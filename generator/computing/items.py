"""Quantities one by one: a family over a set becomes one quantity for each member."""

from __future__ import annotations

from dataclasses import dataclass

from generator.computing.findings import Findings
from generator.formula import Kind, Measured, Word
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


def _kind(library: Library, measure: Measure, book: UnitBook) -> Kind:
    if measure.form == "member":
        return Word(frozenset(member for entry in library.sets.values() for member in entry.members))
    return Measured(book.dimension(measure.unit), measure.point)


def check_units(library: Library, book: UnitBook, findings: Findings) -> None:
    """Finds units without a size, and measures whose units do not belong together."""
    for unit in book.unknown:
        hint = "give it a `definition` in known units, such as `m**2`"
        findings.add("units", unit, (), f"the size of the unit `{unit}` is not known", hint)
    for name, measure in library.measures.items():
        shown = {("us", "unit"): measure.us.unit, ("metric", "unit"): measure.metric.unit, ("unit",): measure.unit}
        for path, unit in shown.items():
            if unit not in book.units:
                findings.add("measures", name, path, f"unknown unit `{unit}`", "write one that the list of units has")
        if any(unit not in book.units or unit in book.unknown for unit in shown.values()):
            continue
        for path, unit in shown.items():
            if book.dimension(unit) != book.dimension(measure.unit):
                findings.add("measures", name, path, f"`{unit}` does not measure what `{measure.unit}` does")
            elif path != ("unit",) and book.reads_a_point(unit) and not measure.point:
                hint = f"write `delta_{unit}`, or `point: true` for what a thermometer reads"
                findings.add(
                    "measures", name, path, f"`{unit}` is a temperature as read, and this measure is not", hint
                )
        size = book.size(measure.unit)
        if size.factor != 1 or size.offset != 0:
            findings.add("measures", name, ("unit",), f"`{measure.unit}` is not the SI unit", "values inside are SI")
