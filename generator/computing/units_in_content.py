"""Units as content declares and uses them: each with a size, and those of one measure belonging together."""

from __future__ import annotations

from collections.abc import Iterator

from generator.computing.findings import Findings, Path
from generator.model.library import Library
from generator.model.measure import Measure
from generator.units import UnitBook, UnitFault


def check_units(library: Library, book: UnitBook, findings: Findings) -> None:
    """Finds units without a size, unknown units, and measures whose units do not belong together."""
    for unit in book.unknown:
        hint = "give it a `definition` in known units, such as `m**2`"
        findings.add("units", unit, (), f"the size of the unit `{unit}` is not known", hint)
    for kind, name, path, unit in _used(library):
        try:
            book.size(unit)
        except UnitFault as fault:
            if unit not in book.unknown:
                findings.add_value(kind, name, path, fault)
    for name, measure in library.measures.items():
        if all(unit in book.units and unit not in book.unknown for unit in _units(measure).values()):
            _check_measure(name, measure, book, findings)


def _units(measure: Measure) -> dict[Path, str]:
    return {("unit",): measure.unit, ("us", "unit"): measure.us.unit, ("metric", "unit"): measure.metric.unit}


def _used(library: Library) -> Iterator[tuple[str, str, Path, str]]:
    """Every unit text outside formulas and values, with its place."""
    for name, measure in library.measures.items():
        for path, unit in _units(measure).items():
            yield "measures", name, path, unit
    for name, function in library.functions.items():
        yield "functions", name, ("unit",), function.unit
        for each, argument in function.arguments.items():
            yield "functions", name, ("arguments", each, "unit"), argument.unit
    for name, table in library.tables.items():
        yield "tables", name, ("unit",), table.unit
        for each, axis in table.axes.items():
            yield "tables", name, ("axes", each, "unit"), axis.unit


def _check_measure(name: str, measure: Measure, book: UnitBook, findings: Findings) -> None:
    size = book.size(measure.unit)
    if size.factor != 1 or size.offset != 0:
        findings.add("measures", name, ("unit",), f"`{measure.unit}` is not the SI unit", "values inside are SI")
    for path, unit in _units(measure).items():
        if book.dimension(unit) != size.dimension:
            findings.add("measures", name, path, f"`{unit}` does not measure what `{measure.unit}` does")
        elif path != ("unit",) and book.reads_a_point(unit) and not measure.point:
            hint = f"write `delta_{unit}`, or `point: true` for what a thermometer reads"
            findings.add("measures", name, path, f"`{unit}` is a temperature as read, and this measure is not", hint)
