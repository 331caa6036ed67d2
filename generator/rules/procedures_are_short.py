"""A list is followed when it fits in a head; the rest belongs in another list."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection

MOST_STEPS = 12
MOST_KEY_POINTS = 5


def procedures_are_short(inspection: Inspection) -> Iterator[Finding]:
    """A procedure has at most 12 steps, and a step at most 5 key points."""
    for name, procedure in inspection.library.procedures.items():
        if len(procedure.steps) > MOST_STEPS:
            fault = f"{len(procedure.steps)} steps, {len(procedure.steps) - MOST_STEPS} too many"
            yield Finding("procedures", name, ("steps",), fault, "split the procedure at a natural pause")
        for step_name, step in procedure.steps.items():
            if len(step.key_points) > MOST_KEY_POINTS:
                fault = f"{len(step.key_points)} key points, {len(step.key_points) - MOST_KEY_POINTS} too many"
                yield Finding(
                    "procedures", name, ("steps", step_name, "key_points"), fault, "keep what makes or breaks"
                )
