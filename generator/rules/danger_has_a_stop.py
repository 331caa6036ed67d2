"""Where people can be badly hurt, they must know beforehand when to stop and what to do first."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def danger_has_a_stop(inspection: Inspection) -> Iterator[Finding]:
    """A procedure with a caution marked `danger` has a stop rule."""
    for name, procedure in inspection.library.procedures.items():
        dangers = [key for key, caution in procedure.cautions.items() if caution.signal == "danger"]
        if dangers and not procedure.stops:
            hint = "write under `stops` when the work stops, what is done first, and who is told"
            yield Finding("procedures", name, ("cautions", dangers[0]), "a danger without a stop rule", hint)
