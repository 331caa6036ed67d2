"""A number that stops the work must be known, and so must be read, and written down where it was read."""

from __future__ import annotations

from collections.abc import Iterator

from generator.reading.placeholders import placeholders
from generator.rules.inspection import Finding, Inspection


def stops_are_logged(inspection: Inspection) -> Iterator[Finding]:
    """Where a number decides a stop, a reading of its kind is logged, but for pages that are at hand all day."""
    library = inspection.library
    for name, procedure in library.procedures.items():
        if library.phases[procedure.phase].at_hand:
            continue
        read = {_kind(inspection, library.readings[reading].measure) for reading in procedure.readings}
        for key, stop in procedure.stops.items():
            for found in placeholders(stop.when):
                quantity = inspection.quantities.get(found.name)  # a choice is no number
                kind = _kind(inspection, quantity.measure) if quantity else None
                if kind and kind not in read:
                    fault = f"`{found.name}` stops the work and nothing of its kind is logged here"
                    hint = f"add {_readings_of(inspection, kind)} to `readings`"
                    yield Finding("procedures", name, ("stops", key, "when"), fault, hint, column=found.column)


def _kind(inspection: Inspection, measure: str | None) -> tuple[str, bool] | None:
    """What a measure is of, however finely: its unit, and whether it is a point on a scale."""
    if measure is None:
        return None
    found = inspection.library.measures[measure]
    return found.unit, found.point


def _readings_of(inspection: Inspection, kind: tuple[str, bool] | None) -> str:
    found = [name for name, item in inspection.library.readings.items() if _kind(inspection, item.measure) == kind]
    return "one of these: " + ", ".join(found) if found else "a new reading"
