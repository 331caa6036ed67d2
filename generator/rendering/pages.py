"""Which pages there are, in the order in which a reader meets them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from generator.model.procedure import Procedure
from generator.rendering.gathering import cautions, choices_by_group, grouped, supplies_by_group
from generator.rendering.plan_pages import plan_pages
from generator.rendering.teaching_pages import faults, paths_in_order, taught_at, teaching_pages
from generator.telling import addresses
from generator.telling.coverage import covered
from generator.telling.edition import Edition
from generator.telling.listing import Listed, offer
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


def papers_page(edition: Edition, papers: Sequence[Listed]) -> Page:
    """The page that offers papers."""
    return _fixed("papers", addresses.PAPERS, **offer(papers, edition.language, edition.first))


def pages(edition: Edition) -> list[Page]:
    """Every page of the edition but the one that offers papers."""
    library = edition.library
    made = [
        _fixed("today", addresses.TODAY, phases=[each for each in phases(edition) if not each[1].at_hand]),
        _fixed("plan", addresses.PLAN, groups=grouped(edition, inputs=True), choices=choices_by_group(edition)),
    ]
    if library.supplies:
        made.append(_fixed("bring", addresses.BRING, groups=supplies_by_group(edition)))
    made += [_fixed(name, address, **parts) for name, address, parts in plan_pages(edition)]
    made += [
        _fixed("log", addresses.LOG, phases=_readings_by_phase(edition)),
        _fixed("record", addresses.RECORD),
        *(_fixed(name, address, **parts) for name, address, parts in teaching_pages(edition)),
        _fixed(
            "help",
            addresses.AT_HAND,
            phases=[each for each in phases(edition) if each[1].at_hand],
            any_faults=any(each[2] for each in faults(edition)),
            stopping=_with_stops(edition),
        ),
        _fixed("cautions", addresses.CAUTIONS, cautions=cautions(edition)),
        _fixed("numbers", addresses.NUMBERS, groups=grouped(edition)),
        *_choice_pages(edition),
        *_prose_pages(edition),
    ]
    if library.terms:
        made.append(_fixed("glossary", addresses.GLOSSARY))
    made += [
        _fixed("sources", addresses.SOURCES),
        _fixed("coverage", addresses.COVERAGE, **covered(edition)),
        _fixed("about", addresses.ABOUT),
    ]
    menu = Page(addresses.MENU, "menu", title_word="title_menu", parts={"pages": made}, head={"kind": "menu"})
    return [*made, menu, *_path_pages(edition), *_number_pages(edition), *_procedure_pages(edition)]


def _readings_by_phase(edition: Edition) -> list[tuple[str, str, list[str]]]:
    """Parts of the day with the ids of what is read in them, in order; parts without any are left out."""
    library = edition.library
    ordered = sorted(library.readings.items(), key=lambda item: item[1].order)
    parts = sorted(library.phases.items(), key=lambda item: item[1].order)
    found = [(name, part.title, [each for each, item in ordered if item.phase == name]) for name, part in parts]
    return [each for each in found if each[2]]


def _with_stops(edition: Edition) -> list[tuple[str, Procedure]]:
    """Jobs of the day that have stop rules, in order; those at hand stand on the page themselves."""
    days = [members for _, phase, members in phases(edition) if not phase.at_hand]
    return [item for members in days for item in members if item[1].stops]


def _fixed(name: str, address: str, **parts: object) -> Page:
    return Page(address, name, title_word=f"title_{name}", parts=parts, head={"kind": name}, in_menu=True)


def _procedure_pages(edition: Edition) -> list[Page]:
    """One page a procedure; those of the day's own phases lead from one to the next."""
    number_of = numbers(edition)
    made = []
    for _, phase, members in phases(edition):
        for name, procedure in members:
            parts = {"id": name, "procedure": procedure, "phase": phase, "number": number_of.get(name, 0)}
            parts |= taught_at(edition, name)
            head = {"kind": "procedure"}
            made.append(Page(addresses.procedure(name), "procedure", title=procedure.title, parts=parts, head=head))
    return _chained(made)


def _path_pages(edition: Edition) -> Iterator[Page]:
    """A page for each way in."""
    for name, path in paths_in_order(edition):
        yield Page(
            addresses.path(name), "path", title=path.title, parts={"id": name, "path": path}, head={"kind": "path"}
        )


def _chained(made: list[Page]) -> list[Page]:
    """The same pages, the numbered ones knowing which come before and after, but for what is done only when needed."""
    chain = [place for place, page in enumerate(made) if page.parts["number"]]
    usual = [place for place in chain if not made[place].parts["procedure"].when_needed]
    linked = list(made)
    for here in chain:
        before = [made[place] for place in usual if place < here]
        after = [made[place] for place in usual if place > here]
        linked[here] = replace(made[here], before=before[-1] if before else None, after=after[0] if after else None)
    return linked


def _choice_pages(edition: Edition) -> Iterator[Page]:
    """A page for each choice whose options have something to say."""
    for name, choice in edition.library.choices.items():
        if any(option.statements for option in choice.options.values()):
            parts = {"id": name, "choice": choice}
            head = {"kind": "choice"}
            yield Page(addresses.choice(name), "choice", title=choice.title, parts=parts, head=head, in_menu=True)


def _prose_pages(edition: Edition) -> Iterator[Page]:
    """Pages of prose; some named like a page that exists anyway are shown at its top instead."""
    for name, page in sorted(edition.library.pages.items(), key=lambda item: item[1].order):
        if addresses.prose(name) not in addresses.WITH_PROSE:
            head = {"kind": "prose"}
            yield Page(addresses.prose(name), "prose", title=page.title, parts={"page": page}, head=head, in_menu=True)


def _number_pages(edition: Edition) -> Iterator[Page]:
    head = {"kind": "workings", "maths": True}
    for name, group, quantities in grouped(edition):
        parts = {"id": name, "group": group, "quantities": quantities}
        yield Page(addresses.group(name), "workings", title=group.title, parts=parts, head=head)
    if edition.library.functions or edition.library.tables:
        yield Page(addresses.METHODS, "methods", title_word="title_methods", head=head)
