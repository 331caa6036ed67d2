"""Whoever stands at a step with wet hands should not have to look for the tool that it names."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.model.procedure import Procedure, Step
from generator.rules.inspection import Finding, Inspection


def tools_are_at_hand(inspection: Inspection) -> Iterator[Finding]:
    """A step that uses a word under `called` of a supply belongs to a procedure that needs such a supply."""
    called: dict[str, list[str]] = {}
    for supply, item in inspection.library.supplies.items():
        for word in item.called:
            called.setdefault(word, []).append(supply)
    for name, procedure in inspection.library.procedures.items():
        texts = "\n".join(text for step in procedure.steps.values() for text in _texts(step)).casefold()
        for word, supplies in called.items():
            step = _step_with(procedure, word) if word.casefold() in texts else ""
            if step and not set(supplies) & set(procedure.needs):
                hint = f"add one of these to `needs`: {', '.join(supplies)}"
                fault = f"“{word}” is named here and not among the needs"
                yield Finding("procedures", name, ("steps", step, "action"), fault, hint)


def _step_with(procedure: Procedure, word: str) -> str:
    pattern = re.compile(rf"(?i)(?<![\w-]){re.escape(word)}(?![\w-])")
    for name, step in procedure.steps.items():
        if any(map(pattern.search, _texts(step))):
            return name
    return ""


def _texts(step: Step) -> Iterator[str]:
    yield step.action
    yield from (point.point for point in step.key_points)
