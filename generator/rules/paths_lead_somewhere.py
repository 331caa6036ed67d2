"""A way in must lead to what is there, and must come to an end."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.model.teaching import Leg
from generator.problems import did_you_mean
from generator.rules.inspection import Finding, Inspection


def paths_lead_somewhere(inspection: Inspection) -> Iterator[Finding]:
    """Legs name steps, cautions and stops of their procedure, and no path comes before itself."""
    library = inspection.library
    for name, path in library.paths.items():
        for key, leg in path.legs.items():
            yield from _unknown_parts(inspection, name, key, leg)
        if name in _before({each: one.before for each, one in library.paths.items()}, name):
            yield Finding("paths", name, ("before",), f"`{name}` comes before itself", "take one of them out")


def _unknown_parts(inspection: Inspection, name: str, key: str, leg: Leg) -> Iterator[Finding]:
    if leg.procedure is None:
        return
    procedure = inspection.library.procedures[leg.procedure]
    wanted: dict[str, Mapping[str, object]] = {
        "steps": procedure.steps,
        "cautions": procedure.cautions,
        "stops": procedure.stops,
    }
    for kind, known in wanted.items():
        for number, part in enumerate(getattr(leg, kind)):
            if part not in known:
                hint = did_you_mean(part, known, f"name one of the {kind} of `{leg.procedure}`")
                path = ("legs", key, kind, number)
                yield Finding("paths", name, path, f"`{leg.procedure}` has no such {kind[:-1]}: `{part}`", hint)


def _before(paths: Mapping[str, tuple[str, ...]], name: str) -> set[str]:
    found, waiting = set[str](), list(paths[name])
    while waiting:
        one = waiting.pop()
        if one not in found:
            found.add(one)
            waiting += paths[one]
    return found
