"""A row that is ticked once is done once: what is really three things is half done when it is ticked."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection

MOST_ORDERS = 2
_WORD = r"([^\W\d_]+)"
_LISTED = re.compile(r":[^.!?;]*")
"""What stands behind a colon is a list, a call or a condition, no order of its own."""
_BEGINS = re.compile(rf"(?:^|[.!?;] |, (?:and )?| and ){_WORD}")
_THEN = re.compile(rf"(?i)\bthen {_WORD}")


def steps_are_one_action(inspection: Inspection) -> Iterator[Finding]:
    """A step gives an order and one to finish it at most, and none after `then`, or is marked `one_motion`."""
    verbs = {word.casefold() for entry in inspection.library.verbs.values() for word in entry.words}
    for name, procedure in inspection.library.procedures.items():
        for step_name, step in procedure.steps.items():
            fault = _more_than_one(step.action, verbs)
            if fault and not step.one_motion:
                hint = "make it two steps, say the rest in a key point, or mark `one_motion: true` if it is one"
                yield Finding("procedures", name, ("steps", step_name, "action"), fault, hint)
            elif step.one_motion and not fault:
                path = ("steps", step_name, "one_motion")
                yield Finding("procedures", name, path, "it is one action anyway", "take `one_motion` out")


def _more_than_one(action: str, verbs: set[str]) -> str:
    text = _LISTED.sub("", action)
    later = next((word for word in _THEN.findall(text) if word.casefold() in verbs), None)
    if later:
        return f"“then {later}” begins another step"
    orders = [word for word in _BEGINS.findall(text) if word.casefold() in verbs]
    if len(orders) > MOST_ORDERS:
        return f"{len(orders)} orders in one step: {', '.join(orders)}"
    return ""
