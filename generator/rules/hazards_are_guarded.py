"""Safety belongs into the steps: a caution at the top of a page is forgotten by the third row."""

from __future__ import annotations

from collections.abc import Iterator

from generator.problems import did_you_mean
from generator.rules.inspection import Finding, Inspection

_GRAVE = ("danger", "warning")


def hazards_are_guarded(inspection: Inspection) -> Iterator[Finding]:
    """Every danger and warning of a procedure is named in the `guards` of a step, and `guards` name its cautions."""
    for name, procedure in inspection.library.procedures.items():
        guarded = set[str]()
        for step_name, step in procedure.steps.items():
            for number, caution in enumerate(step.guards):
                guarded.add(caution)
                if caution not in procedure.cautions:
                    hint = did_you_mean(caution, procedure.cautions, "name a caution of this procedure")
                    path = ("steps", step_name, "guards", number)
                    yield Finding("procedures", name, path, f"unknown caution `{caution}`", hint)
        for key, caution_ in procedure.cautions.items():
            if caution_.signal in _GRAVE and key not in guarded:
                hint = f"give the step that prevents it a key point for safety, and write `guards: [{key}]` there"
                yield Finding("procedures", name, ("cautions", key), f"no step guards against `{key}`", hint)
