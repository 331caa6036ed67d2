"""The parts of the day in order, and the number that each procedure has on its page and on its card."""

from __future__ import annotations

from generator.model.procedure import Phase, Procedure
from generator.telling.edition import Edition


def phases(edition: Edition) -> list[tuple[str, Phase, list[tuple[str, Procedure]]]]:
    """The parts of the day in order, each with its procedures in order; parts without any are left out."""
    library = edition.library
    ordered = sorted(library.procedures.items(), key=lambda item: item[1].order)
    all_phases = sorted(library.phases.items(), key=lambda item: item[1].order)
    found = [(name, phase, [item for item in ordered if item[1].phase == name]) for name, phase in all_phases]
    return [each for each in found if each[2]]


def numbers(edition: Edition) -> dict[str, int]:
    """The number of each procedure that is part of the day, from 1; those at hand have none."""
    chain = [name for _, phase, members in phases(edition) if not phase.at_hand for name, _ in members]
    return {name: number for number, name in enumerate(chain, 1)}
