"""Units and measures as content declares them: each unit with a size, and those of one measure belonging together."""

from __future__ import annotations

from generator.computing.findings import Findings
from generator.model.leaves import Path
from generator.model.library import Library
from generator.model.measure import Measure
from generator.units import UnitBook


def check_units(library: Library, book: UnitBook, findings: Findings) -> None:
    """Finds units without a size, and measures whose units do not belong together."""
    for unit in book.unknown:
        hint = "give it a `definition` in known units, such as `m**2`"
        findings.add("units", unit, (), f"the size of the unit `{unit}` is not known", hint)
    for name, measure in library.measures.items():
        if not {*_units(measure).values()} & {*book.unknown}:
            _check_measure(name, measure, book, findings)


def _units(measure: Measure) -> dict[Path, str]:
    return {("unit",): measure.unit, ("us", "unit"): measure.us.unit, ("metric", "unit"): measure.metric.unit}


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
