"""Tables in SI."""

from __future__ import annotations

from fractions import Fraction

from generator.formula.runtime import Table
from generator.model.table import Table as TableEntry
from generator.units import UnitBook


def in_si(entry: TableEntry, book: UnitBook) -> Table:
    """A table of content, as the runtime reads it."""

    def convert(numbers: tuple[float, ...], unit: str) -> list[float]:
        return [book.to_si(Fraction(str(number)), unit) for number in numbers]

    rows = [
        convert(row, entry.unit) if isinstance(row, tuple) else convert((row,), entry.unit)[0] for row in entry.values
    ]
    return {
        "axes": [convert(axis.points, axis.unit) for axis in entry.axes.values()],
        "values": rows,
        "hold": entry.hold_ends,
    }
