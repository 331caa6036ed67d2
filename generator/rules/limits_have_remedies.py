"""Whoever writes down a reading outside its limit wants to know at once what to do."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def limits_have_remedies(inspection: Inspection) -> Iterator[Finding]:
    """Every reading with a limit is named in the `readings` of a fault."""
    faults = [fault for each in inspection.library.procedures.values() for fault in each.faults.values()]
    answered = {reading for fault in faults for reading in fault.readings}
    for name, item in inspection.library.readings.items():
        if (item.low or item.high) and name not in answered:
            hint = f"write `readings: [{name}]` at the fault that it points to"
            yield Finding("readings", name, (), f"no fault says what to do when `{name}` lies outside", hint)
