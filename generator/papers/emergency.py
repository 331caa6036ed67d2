"""The one card for emergencies: whom to call, and what to do first."""

from __future__ import annotations

from generator.model.paper import Paper
from generator.papers.data import Data
from generator.papers.wording import Wording

FIRST_STEPS = 3


def emergency(paper: Paper, say: Wording) -> Data:
    """The data: calls, and for each emergency its first steps."""
    library = say.edition.library
    found = [one for one in library.procedures.values() if one.phase == paper.emergency]
    jobs = [
        {
            "title": say.text(one.title),
            "steps": [say.runs(step.action) for step in one.steps.values() if say.edition.applies(step)][:FIRST_STEPS],
        }
        for one in sorted(found, key=lambda one: one.order)
    ]
    return {
        "intro": say.runs(paper.intro),
        "address": library.this_farm.yard_address,
        "calls": calls(say),
        "jobs": jobs,
        "words": {name: say.word(f"paper_{name}") for name in ("call", "emergency_number", "we_are_at")},
    }


def calls(say: Wording) -> list[Data]:
    """Whom to call, as the farm gives it, the emergency number first."""
    farm = say.edition.library.this_farm
    first = [{"title": say.word("frame_help"), "call": farm.emergency_call}] if farm.emergency_call else []
    contacts = farm.contacts.values()
    return first + [{"title": say.text(contact.title), "call": contact.call} for contact in contacts]
