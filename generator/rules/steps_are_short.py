"""What does not fit into a breath is not remembered at the station."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection

MOST_WORDS = 16
_NUMBER = re.compile(r"\{[^{}]*\}")


def steps_are_short(inspection: Inspection) -> Iterator[Finding]:
    """A step has at most 16 words; a number with its unit counts as one."""
    for name, procedure in inspection.library.procedures.items():
        for step_name, step in procedure.steps.items():
            words = len(_NUMBER.sub("0", step.action).split())
            if words > MOST_WORDS:
                hint = "say the rest in a key point, or make it two steps"
                fault = f"{words} words, {words - MOST_WORDS} too many"
                yield Finding("procedures", name, ("steps", step_name, "action"), fault, hint)
