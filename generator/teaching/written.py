"""Where things are written: parts of procedures, by their kind and id."""

from __future__ import annotations

from collections.abc import Mapping

from generator.model.library import Library
from generator.model.procedure import Caution, Fault, Step, StopRule
from generator.model.teaching import Written
from generator.telling import addresses

Part = Step | Caution | StopRule | Fault


def parts_of(library: Library, written: Written) -> dict[str, Part]:
    """All parts of the kind that a question is written in, by id."""
    procedure = library.procedures[written.procedure]
    kinds: dict[str, Mapping[str, Part]] = {
        "step": procedure.steps,
        "caution": procedure.cautions,
        "stop": procedure.stops,
        "fault": procedure.faults,
    }
    return dict(kinds[written.part])


def address_of(written: Written) -> str:
    """The place on the site."""
    return f"{addresses.procedure(written.procedure)}#{written.part}-{written.id}"
