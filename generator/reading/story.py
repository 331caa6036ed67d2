"""Content from folders to a checked library, stage by stage."""

from __future__ import annotations

from pathlib import Path

from generator.problems import Place, Problem, ProblemsFound, stop_at
from generator.reading.files import KINDS, shown_path
from generator.reading.fitting import check_fitting
from generator.reading.layer import read_layer
from generator.reading.overlay import REMOVE, lay_over, refuse_removal
from generator.reading.reading import Reading
from generator.reading.references import check_references
from generator.reading.shape import give_shape


def read_library(shared: Path, farm: Path) -> Reading:
    """Reads the shared content and a farm's overlay. Raises ProblemsFound with all problems of the first bad stage.

    The stages: files and YAML; the overlay; the shape of entries; the ids they name; whether those fit.
    """
    reading = read_entries(shared, farm)
    stop_at(check_references(reading))
    stop_at(check_fitting(reading))
    return reading


def read_entries(shared: Path, farm: Path) -> Reading:
    """The first stages alone: entries of the right shape, which may still name what does not exist."""
    problems: list[Problem] = []
    below = read_layer(shared, "shared", problems)
    above = read_layer(farm, "farm", problems)
    stop_at(problems)
    for kind in KINDS:
        refuse_removal(below[kind], problems)
    entries = {kind: lay_over(below[kind], above[kind], problems) for kind in KINDS}
    stop_at(problems)
    library = give_shape(entries, below)
    if len(library.farm) != 1:
        fault = f"there are {len(library.farm)} entries of kind `farm`, not one"
        raise ProblemsFound([Problem(Place(shown_path(farm / "farm")), fault, "write one, in the farm's overlay")])
    removed = {kind: {name: node for name, node in above[kind].items() if node.value == REMOVE} for kind in KINDS}
    return Reading(library, entries, shared, farm, removed)
