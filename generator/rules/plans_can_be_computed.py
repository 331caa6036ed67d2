"""A plan that a farm picks must work when it is picked, not only look right."""

from __future__ import annotations

from collections.abc import Iterator

from generator.computing.day import NOT_FINITE
from generator.rules.inspection import Finding, Inspection


def plans_can_be_computed(inspection: Inspection) -> Iterator[Finding]:
    """At the values of every plan each number can be computed, or a requirement of its own says why not."""
    for name, plan in inspection.library.plans.items():
        day = inspection.workbook.compute(inspection.workbook.settle(plan.values, {}))
        for quantity, refusal in day.refused.items():
            if refusal.key == NOT_FINITE and refusal.because is None:
                fault = f"`{quantity}` cannot be computed on this plan: division by zero, or outside a table"
                hint = f"change the plan's values, or give `{quantity}` a `require` that says when it has no number"
                yield Finding("plans", name, (), fault, hint)
