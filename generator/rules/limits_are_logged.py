"""A limit that was kept and not written down cannot be shown."""

from __future__ import annotations

from collections.abc import Iterator

from generator.model.procedure import Procedure
from generator.rules.inspection import Finding, Inspection


def limits_are_logged(inspection: Inspection) -> Iterator[Finding]:
    """A procedure that holds to the limit of a reading, as a target or at a step, names such a reading."""
    readings = inspection.library.readings
    for name, procedure in inspection.library.procedures.items():
        for limit in _held_to(procedure):
            logging = [reading for reading, item in readings.items() if limit in (item.low, item.high)]
            if logging and not set(logging) & set(procedure.readings):
                fault = f"`{limit}` is held to here and not logged"
                hint = f"name one of these in `readings`: {', '.join(logging)}"
                yield Finding("procedures", name, (), fault, hint)


def _held_to(procedure: Procedure) -> dict[str, None]:
    at_steps = [value for step in procedure.steps.values() for value in (step.number, step.timer) if value]
    return dict.fromkeys([*procedure.targets, *at_steps])
