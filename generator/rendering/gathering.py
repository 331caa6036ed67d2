"""Entries as pages list them: under their headings, in order, without empty headings."""

from __future__ import annotations

from generator.computing.items import Item
from generator.model.choice import Choice
from generator.model.procedure import SIGNALS, Caution, Procedure, Supply
from generator.model.quantity import Group
from generator.telling.edition import Edition
from generator.telling.phases import phases


def groups_in_order(edition: Edition) -> list[tuple[str, Group]]:
    """All headings in order."""
    return sorted(edition.library.groups.items(), key=lambda pair: pair[1].order)


def grouped(edition: Edition, *, inputs: bool = False) -> list[tuple[str, Group, list[Item]]]:
    """Headings with their quantities, all or only inputs."""
    workbook = edition.workbook
    items = [item for item in workbook.items.values() if not inputs or item.id in workbook.givens.inputs]
    choices = choices_by_group(edition) if inputs else {}
    found = [
        (name, group, [item for item in items if item.quantity.group == name])
        for name, group in groups_in_order(edition)
    ]
    return [each for each in found if each[2] or each[0] in choices]


def choices_by_group(edition: Edition) -> dict[str, list[tuple[str, Choice]]]:
    """Choices by the heading they stand under."""
    found: dict[str, list[tuple[str, Choice]]] = {}
    for name, choice in edition.library.choices.items():
        found.setdefault(choice.group, []).append((name, choice))
    return found


def supplies_by_group(edition: Edition) -> list[tuple[str, Group, list[tuple[str, Supply]]]]:
    """Headings with the things to bring."""
    supplies = edition.library.supplies.items()
    found = [
        (name, group, [item for item in supplies if item[1].group == name]) for name, group in groups_in_order(edition)
    ]
    return [each for each in found if each[2]]


def cautions(edition: Edition) -> list[tuple[str, list[tuple[str, Procedure, str, Caution]]]]:
    """All cautions by signal, each with the procedure it stands in."""
    members = [member for _, _, all_members in phases(edition) for member in all_members]
    found = [(name, each, key, entry) for name, each in members for key, entry in each.cautions.items()]
    by_signal = [(signal, [each for each in found if each[3].signal == signal]) for signal in SIGNALS]
    return [each for each in by_signal if each[1]]
