"""A step is an order: whoever hears it knows from its first word what to do."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection

_FIRST = re.compile(r"[^\W\d_]+")


def steps_begin_with_a_verb(inspection: Inspection) -> Iterator[Finding]:
    """The first word of every step is one of the verbs that content lists."""
    verbs = {word.casefold() for entry in inspection.library.verbs.values() for word in entry.words}
    for name, procedure in inspection.library.procedures.items():
        for step_name, step in procedure.steps.items():
            first = _FIRST.match(step.action)
            if first is None or first[0].casefold() not in verbs:
                word = first[0] if first else step.action.split()[0]
                hint = "put the thing to do first, or add its verb to a list in the folder `verbs`"
                fault = f"the step begins with “{word}”, which is not a verb we know"
                yield Finding("procedures", name, ("steps", step_name, "action"), fault, hint)
