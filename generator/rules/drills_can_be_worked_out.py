"""A question whose numbers fail is a question that cannot be asked."""

from __future__ import annotations

from collections.abc import Iterator

from generator.problems import did_you_mean
from generator.reading.placeholders import placeholders
from generator.rules.inspection import Finding, Inspection
from generator.teaching.drill_bounds import bounds
from generator.teaching.drill_formulas import link_drills
from generator.units import UnitFault


def drills_can_be_worked_out(inspection: Inspection) -> Iterator[Finding]:
    """Formulas, bounds and places for numbers of a drill name quantities, or what it draws or works out itself."""
    for flaw in link_drills(inspection.workbook)[1]:
        yield Finding(*flaw)
    for name, drill in inspection.library.drills.items():
        if all(key in inspection.workbook.givens.inputs for key in drill.vary):
            try:
                bounds(inspection.workbook, drill)
            except UnitFault as found:
                yield Finding("drills", name, (), found.fault, found.hint)
    yield from _unknown_names(inspection)


def _unknown_names(inspection: Inspection) -> Iterator[Finding]:
    library = inspection.library
    for leaf in inspection.human:
        if leaf.kind == "drills":
            own = {**library.drills[leaf.name].draws, **library.drills[leaf.name].works}
            known = {**inspection.quantities, **library.choices, **own}
            for place in placeholders(leaf.text):
                if place.name not in known:
                    hint = did_you_mean(place.name, known, "write a quantity, or a number that this drill draws")
                    fault = f"unknown number `{place.name}`"
                    yield Finding("drills", leaf.name, leaf.path, fault, hint, column=place.column)
