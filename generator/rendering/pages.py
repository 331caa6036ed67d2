"""Which pages there are, in the order in which a reader meets them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Any

from generator.computing.items import Item
from generator.model.procedure import Procedure
from generator.telling import addresses
from generator.telling.edition import Edition
from generator.telling.phases import numbers, phases


@dataclass(frozen=True)
class Page:
    """A page to be written: where it stands, which template makes it, and from what."""

    address: str
    template: str
    title_word: str = ""
    title: str = ""
    parts: dict[str, Any] = field(default_factory=dict)
    head: dict[str, Any] = field(default_factory=dict)
    in_menu: bool = False
    before: Page | None = None
    after: Page | None = None

    @property
    def file(self) -> str:
        """The Markdown file it becomes."""
        return addresses.file_of(self.address)


def pages(edition: Edition) -> list[Page]:
    """Every page of the edition."""
    library = edition.library
    made = [
        _fixed("today", addresses.TODAY, phases=[each for each in phases(edition) if not each[1].at_hand]),
        _fixed("plan", addresses.PLAN, groups=grouped(edition, inputs=True), choices=choices_by_group(edition)),
    ]
    if library.supplies:
        made.append(_fixed("bring", addresses.BRING, groups=supplies_by_group(edition)))
    made += [
        _fixed("help", addresses.AT_HAND, phases=[each for each in phases(edition) if each[1].at_hand]),
        _fixed("cautions", addresses.CAUTIONS, cautions=cautions(edition)),
        _fixed("numbers", addresses.NUMBERS, groups=grouped(edition)),
        *_choice_pages(edition),
        *_prose_pages(edition),
    ]
    if library.terms:
        made.append(_fixed("glossary", addresses.GLOSSARY))
    made += [_fixed("sources", addresses.SOURCES), _fixed("about", addresses.ABOUT)]
    return [*made, *_number_pages(edition), *procedure_pages(edition)]


def _fixed(name: str, address: str, **parts: object) -> Page:
    return Page(address, name, title_word=f"title_{name}", parts=parts, head={"kind": name}, in_menu=True)


def procedure_pages(edition: Edition) -> list[Page]:
    """One page a procedure; those of the day's own phases lead from one to the next."""
    number_of = numbers(edition)
    chain: list[Page] = []
    aside: list[Page] = []
    for _, phase, members in phases(edition):
        for name, procedure in members:
            place = aside if phase.at_hand else chain
            parts = {"id": name, "procedure": procedure, "phase": phase, "number": number_of.get(name, 0)}
            head = {"kind": "procedure", "description": edition.translate(procedure.purpose)}
            place.append(Page(addresses.procedure(name), "procedure", title=procedure.title, parts=parts, head=head))
    for step, (one, following) in enumerate(pairwise(list(chain))):
        chain[step] = replace(chain[step], after=following)
        chain[step + 1] = replace(chain[step + 1], before=one)
    return [*chain, *aside]


def grouped(edition: Edition, *, inputs: bool = False) -> list[tuple[str, Any, list[Item]]]:
    """Groups in order with their quantities, all or only inputs; groups with nothing to show are left out."""
    workbook = edition.workbook
    items = [item for item in workbook.items.values() if not inputs or item.id in workbook.givens.inputs]
    groups = sorted(edition.library.groups.items(), key=lambda pair: pair[1].order)
    choices = choices_by_group(edition) if inputs else {}
    found = [(name, group, [item for item in items if item.quantity.group == name]) for name, group in groups]
    return [each for each in found if each[2] or each[0] in choices]


def choices_by_group(edition: Edition) -> dict[str, list[tuple[str, Any]]]:
    """Choices by the group they stand in."""
    found: dict[str, list[tuple[str, Any]]] = {}
    for name, choice in edition.library.choices.items():
        found.setdefault(choice.group, []).append((name, choice))
    return found


def supplies_by_group(edition: Edition) -> list[tuple[str, Any, list[tuple[str, Any]]]]:
    """Things to bring, under their headings in order."""
    groups = sorted(edition.library.groups.items(), key=lambda item: item[1].order)
    supplies = edition.library.supplies.items()
    found = [(name, group, [item for item in supplies if item[1].group == name]) for name, group in groups]
    return [each for each in found if each[2]]


def cautions(edition: Edition) -> list[tuple[str, list[tuple[str, Procedure, str, Any]]]]:
    """All cautions, gravest signal first."""
    found = [
        (name, procedure, key, caution)
        for _, _, members in phases(edition)
        for name, procedure in members
        for key, caution in procedure.cautions.items()
    ]
    signals = ("danger", "warning", "caution", "notice")
    sorted_ = [(signal, [each for each in found if each[3].signal == signal]) for signal in signals]
    return [each for each in sorted_ if each[1]]


def _choice_pages(edition: Edition) -> Iterator[Page]:
    """A page for each choice whose options have something to say."""
    for name, choice in edition.library.choices.items():
        if any(option.statements for option in choice.options.values()):
            parts = {"id": name, "choice": choice}
            head = {"kind": "choice"}
            yield Page(addresses.choice(name), "choice", title=choice.title, parts=parts, head=head, in_menu=True)


def _prose_pages(edition: Edition) -> Iterator[Page]:
    """Pages of prose; those named like a page that exists anyway are shown at its top instead."""
    taken = {addresses.CAUTIONS, addresses.ABOUT, addresses.PLAN, addresses.AT_HAND}
    for name, page in sorted(edition.library.pages.items(), key=lambda item: item[1].order):
        if addresses.prose(name) not in taken:
            head = {"kind": "prose"}
            yield Page(addresses.prose(name), "prose", title=page.title, parts={"page": page}, head=head, in_menu=True)


def _number_pages(edition: Edition) -> Iterator[Page]:
    for name, group, quantities in grouped(edition):
        parts = {"id": name, "group": group, "quantities": quantities}
        head = {"kind": "workings", "maths": True}
        yield Page(addresses.group(name), "workings", title=group.title, parts=parts, head=head)
