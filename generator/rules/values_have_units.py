"""Every value text is read before anything is computed with it."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.figures import Figure, figures
from generator.rules.inspection import Finding, Inspection
from generator.units import UnitFault


def values_have_units(inspection: Inspection) -> Iterator[Finding]:
    """Every default, range, step, value, option's value and plan's value is a number in a unit of its measure."""
    for figure in figures(inspection):
        fault = _fault(inspection, figure)
        if fault:
            yield Finding(figure.kind, figure.name, figure.path, fault.fault, fault.hint)


def _fault(inspection: Inspection, figure: Figure) -> UnitFault | None:
    try:
        figure.read(inspection)
    except UnitFault as fault:
        return fault
    return None
