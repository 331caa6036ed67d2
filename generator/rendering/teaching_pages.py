"""Pages on which people learn, are asked and are signed off, and the page of all that can go wrong."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from generator.model.procedure import Fault, Procedure
from generator.model.teaching import Path
from generator.telling import addresses
from generator.telling.edition import Edition
from generator.telling.phases import phases

Parts = dict[str, Any]


def teaching_pages(edition: Edition) -> Iterator[tuple[str, str, Parts]]:
    """Template, address and parts of each page for which content has something to show, in the order of the menu."""
    library = edition.library
    if library.paths:
        yield "learn", addresses.LEARN, {"paths": paths_in_order(edition)}
    if library.drills:
        yield "drills", addresses.DRILLS, {"paths": paths_in_order(edition)}
    if library.skills:
        skills = sorted(library.skills.items(), key=lambda item: item[1].order)
        yield "signing", addresses.SIGNING, {"skills": skills}
    troubles = [each for each in faults(edition) if each[2]]
    if troubles:
        yield "faults", addresses.FAULTS, {"stations": troubles, "outside": outside(edition)}


def paths_in_order(edition: Edition) -> list[tuple[str, Path]]:
    """All ways in."""
    return sorted(edition.library.paths.items(), key=lambda item: item[1].order)


def faults(edition: Edition) -> list[tuple[str, Procedure, dict[str, Fault]]]:
    """What can go wrong, by procedure in the order of the day."""
    return [(name, each, each.faults) for _, _, members in phases(edition) for name, each in members]


def outside(edition: Edition) -> list[tuple[str, list[tuple[str, str, Fault]]]]:
    """Readings with the faults that they point to when they lie outside their limits."""
    found: dict[str, list[tuple[str, str, Fault]]] = {}
    for name, _, all_faults in faults(edition):
        for key, fault in all_faults.items():
            for reading in fault.readings:
                found.setdefault(reading, []).append((name, key, fault))
    order = sorted(found, key=lambda reading: (edition.library.readings[reading].order, reading))
    return [(reading, found[reading]) for reading in order]


def taught_at(edition: Edition, procedure: str) -> Parts:
    """Whether there are questions about a procedure, and which skills its place asks for."""
    library = edition.library
    ordered = sorted(library.skills.items(), key=lambda item: item[1].order)
    return {
        "asked": any(drill.written.procedure == procedure for drill in library.drills.values()),
        "signed": [name for name, skill in ordered if procedure in skill.places],
    }
