"""A drawing that no step shows is never seen."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def pictures_are_used(inspection: Inspection) -> Iterator[Finding]:
    """Every picture is shown by a step."""
    shown = inspection.referred("pictures")
    for name in inspection.library.pictures:
        if name not in shown:
            hint = f"write `picture: {name}` in a step, or take it out"
            yield Finding("pictures", name, (), f"picture `{name}` is not shown", hint)
