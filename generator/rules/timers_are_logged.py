"""A time that was kept and not written down cannot be shown; a time that nobody asks for needs no entry."""

from __future__ import annotations

from collections.abc import Iterator

from generator.model.procedure import Procedure
from generator.rules.inspection import Finding, Inspection


def timers_are_logged(inspection: Inspection) -> Iterator[Finding]:
    """A timed step is shown by a reading, its procedure's or the one it names, or says why the log needs none."""
    for name, procedure in inspection.library.procedures.items():
        known = _times_read(inspection, procedure)
        for step_name, step in procedure.steps.items():
            if not step.timer:
                continue
            logged = bool(step.logged) or step.timer in known
            if not logged and not step.unlogged:
                fault = f"`{step.timer}` is timed here and not logged"
                hint = "name in `logged` the reading that shows it, or say in `unlogged` why the log needs none"
                yield Finding("procedures", name, ("steps", step_name, "timer"), fault, hint)
            elif logged and step.unlogged:
                fault = f"`{step.timer}` is logged after all"
                yield Finding("procedures", name, ("steps", step_name, "unlogged"), fault, "take `unlogged` out")


def _times_read(inspection: Inspection, procedure: Procedure) -> set[str]:
    """What limits the readings of a procedure, and how often they are taken."""
    items = [inspection.library.readings[reading] for reading in procedure.readings]
    return {time for item in items for time in (item.low, item.high, item.within, item.rhythm) if time}
