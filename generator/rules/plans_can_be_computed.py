"""A plan that a farm picks must work when it is picked, not only look right."""

from __future__ import annotations

from collections.abc import Iterator

from generator.problems import ProblemsFound
from generator.rules.inspection import Finding, Inspection


def plans_can_be_computed(inspection: Inspection) -> Iterator[Finding]:
    """At the values of every plan every number can be computed."""
    for name, plan in inspection.library.plans.items():
        try:
            day = inspection.workbook.compute(inspection.workbook.settle(plan.values, {}))
        except ProblemsFound as found:
            for problem in found.problems:
                yield Finding("plans", name, ("values",), problem.fault, problem.hint)
            continue
        for quantity, refusal in day.refused.items():
            fault = f"`{quantity}` cannot be computed on this plan: {refusal.sentence}"
            yield Finding("plans", name, (), fault, "change the plan's values")
