"""A range keeps slips out; a default or a plan outside it would be refused on the phone."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.figures import Figure, figures
from generator.rules.inspection import Finding, Inspection
from generator.units import UnitFault

_SLACK = 1e-9
"""Relative; the same value written in two units may differ in its last digit."""


def inputs_lie_in_range(inspection: Inspection) -> Iterator[Finding]:
    """An input's default, and what options and plans give it, lies in its range, and is whole where it counts."""
    for figure in figures(inspection):
        if figure.path[0] in ("default", "options") or figure.kind == "plans":
            yield from _outside(inspection, figure)


def _outside(inspection: Inspection, figure: Figure) -> Iterator[Finding]:
    quantity = inspection.quantities[figure.quantity]
    if quantity.range is None:
        return
    try:
        value = figure.read(inspection)
        least, most = _range(inspection, figure.quantity)
    except UnitFault:
        return
    slack = _SLACK * max(abs(least), abs(most))
    given = f"`{figure.quantity}` is {figure.text}"
    if not least - slack <= value <= most + slack:
        low, high = quantity.range
        yield Finding(figure.kind, figure.name, figure.path, f"{given}, out of its range", f"from {low} to {high}")
    elif quantity.whole and value != round(value):
        yield Finding(figure.kind, figure.name, figure.path, f"{given}, and it counts things", "write a whole number")


def _range(inspection: Inspection, name: str) -> tuple[float, float]:
    quantity = inspection.quantities[name]
    measure = inspection.library.measures[quantity.measure]
    low, high = quantity.range or ("", "")
    return inspection.workbook.book.read(low, measure), inspection.workbook.book.read(high, measure)
