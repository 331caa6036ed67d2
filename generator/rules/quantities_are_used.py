"""A number that nobody meets is either forgotten in the text or not worth computing."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def quantities_are_used(inspection: Inspection) -> Iterator[Finding]:
    """Every quantity is used by a formula, a condition, a text, a step, a target, a supply or a board."""
    used = inspection.in_formulas | inspection.in_texts | inspection.referred("quantities")
    for name, quantity in inspection.library.quantities.items():
        members = inspection.library.sets[quantity.each].members if quantity.each else ()
        if used.isdisjoint({name, *(f"{name}_{member}" for member in members)}):
            hint = "write it where it is read as `{" + name + "}`, use it in a formula, or take it out"
            yield Finding("quantities", name, (), f"quantity `{name}` is not used", hint)
