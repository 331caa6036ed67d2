"""A question asks for what the lists say; whoever answers wrongly must be able to read it there."""

from __future__ import annotations

from collections.abc import Iterator

from generator.model.procedure import Step
from generator.model.teaching import Drill
from generator.problems import did_you_mean
from generator.rules.inspection import Finding, Inspection
from generator.teaching.written import parts_of

FEWEST = 4


def drills_are_written_down(inspection: Inspection) -> Iterator[Finding]:
    """The part that a drill is written in exists; steps to arrange stand there in that order, whatever the plan."""
    for name, drill in inspection.library.drills.items():
        parts = parts_of(inspection.library, drill.written)
        if drill.written.id not in parts:
            hint = did_you_mean(drill.written.id, parts, f"name a {drill.written.part} of that procedure")
            fault = f"`{drill.written.procedure}` has no {drill.written.part} `{drill.written.id}`"
            yield Finding("drills", name, ("written", "id"), fault, hint)
        if drill.arrange:
            yield from _bad_order(inspection, name, drill)


def _bad_order(inspection: Inspection, name: str, drill: Drill) -> Iterator[Finding]:
    steps: dict[str, Step] = inspection.library.procedures[drill.written.procedure].steps
    for number, step in enumerate(drill.arrange):
        if step not in steps:
            hint = did_you_mean(step, steps, "name a step of the procedure")
            yield Finding("drills", name, ("arrange", number), f"unknown step `{step}`", hint)
        elif steps[step].only:
            fault = f"`{step}` is done under some plans only"
            yield Finding("drills", name, ("arrange", number), fault, "take steps that are always done")
    if list(drill.arrange) != [step for step in steps if step in drill.arrange] and set(drill.arrange) <= set(steps):
        yield Finding("drills", name, ("arrange",), "not in the order of the procedure", "put them in its order")
    if len(drill.arrange) < FEWEST:
        yield Finding("drills", name, ("arrange",), "too few steps to arrange", f"give at least {FEWEST}")
