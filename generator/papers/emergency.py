"""The one paper for emergencies: whom to call, and what to do, to the last step."""

from __future__ import annotations

from generator.model.paper import Paper
from generator.model.procedure import Step
from generator.papers.data import Data
from generator.papers.wording import Wording


def emergency(paper: Paper, say: Wording) -> Data:
    """The data: calls, and for each emergency all its steps."""
    library = say.edition.library
    found = [one for one in library.procedures.values() if one.phase == paper.emergency]
    jobs = [
        {
            "title": say.text(one.title),
            "steps": [_step(step, say) for step in one.steps.values() if say.edition.applies(step)],
        }
        for one in sorted(found, key=lambda one: one.order)
    ]
    return {
        "address": library.this_farm.yard_address,
        "calls": calls(say),
        "jobs": jobs,
        "words": {name: say.word(f"paper_{name}") for name in ("call", "emergency_number", "we_are_at", "time_up")},
    }


def _step(step: Step, say: Wording) -> Data:
    """The action with its number, and what makes or breaks it; reasons are for calmer days."""
    return {
        "action": say.runs(step.action),
        "number": _number(step, say),
        "end": say.runs(step.timer_end),
        "points": [say.runs(each.point) for each in step.key_points],
    }


def _number(step: Step, say: Wording) -> str:
    """The time or the value that a phone shows large at the step, where its words do not say it already."""
    named = step.timer or step.number
    return say.value(named) if named and f"{{{named}" not in step.action else ""


def calls(say: Wording) -> list[Data]:
    """Whom to call, as the farm gives it, the emergency number first."""
    farm = say.edition.library.this_farm
    first = [{"title": say.word("frame_help"), "call": farm.emergency_call}] if farm.emergency_call else []
    contacts = farm.contacts.values()
    return first + [{"title": say.text(contact.title), "call": contact.call} for contact in contacts]
