"""What is on the list of things to bring must be needed at some station."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def supplies_are_needed(inspection: Inspection) -> Iterator[Finding]:
    """Every supply is among the needs of a procedure."""
    needed = inspection.referred("supplies")
    for name in inspection.library.supplies:
        if name not in needed:
            hint = "add it to the `needs` of a procedure, or take it out"
            yield Finding("supplies", name, (), f"supply `{name}` is needed nowhere", hint)
