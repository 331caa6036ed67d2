"""A person who knows why does it right when nobody looks."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def key_points_have_reasons(inspection: Inspection) -> Iterator[Finding]:
    """Every key point has a `why`, or is marked `plain`, and never both."""
    for name, procedure in inspection.library.procedures.items():
        for step_name, step in procedure.steps.items():
            for number, key in enumerate(step.key_points):
                path = ("steps", step_name, "key_points", number)
                if not key.why and not key.plain:
                    hint = "write `why: ...`, or `plain: true` where nobody would ask"
                    yield Finding("procedures", name, path, "a key point without a reason", hint)
                elif key.why and key.plain:
                    yield Finding("procedures", name, path, "a reason for what is plain", "take out one of the two")
