"""What can be searched for: the titles of all pages and of what stands in them. Their texts weighed too much."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator

from generator.model.procedure import Procedure
from generator.reading.placeholders import placeholders
from generator.rendering.pages import Page
from generator.telling.edition import Edition
from generator.telling.figures import Figures

FILE = "search.json"
Part = tuple[str, str]
"""The part of a page, as an address names it after `#`, and its title with the places for numbers still in it."""


def search_index(
    edition: Edition, figures: Figures, made: Iterable[Page], title: Callable[[Page], str]
) -> dict[str, str]:
    """The index by its path. Numbers stand apart from titles, so that what is found shows those of the plan."""
    translate = edition.translate
    pages = [
        (page.address, title(page), [(part, translate(said)) for part, said in _parts(edition, figures, page)])
        for page in made
    ]
    titles = [said for _, _, parts in pages for _, said in parts]
    used = sorted({place.name for said in titles for place in placeholders(said)})
    values = {name: [figures.text(name), figures.text(name, "first")] for name in used}
    return {FILE: json.dumps({"pages": pages, "values": values}, ensure_ascii=False, separators=(",", ":"))}


def _parts(edition: Edition, figures: Figures, page: Page) -> Iterator[Part]:
    library = edition.library
    match page.template:
        case "procedure":
            yield from _of_procedure(page.parts["procedure"])
        case "workings":
            yield from ((item.id, figures.title_of(item.id)) for item in page.parts["quantities"])
        case "methods":
            yield from ((name, function.title) for name, function in library.functions.items())
            yield from ((name, table.title) for name, table in library.tables.items())
        case "bring":
            yield from ((f"step-{name}", supply.title) for name, supply in library.supplies.items())
        case "choice":
            yield from ((name, option.title) for name, option in page.parts["choice"].options.items())
        case "glossary":
            yield from ((name, term.title) for name, term in library.terms.items())
        case "prose":
            yield from ((name, section.title) for name, section in page.parts["page"].sections.items())
        case "cautions" | "about":
            own = library.pages.get(page.address.removesuffix("/"))
            yield from ((name, section.title) for name, section in own.sections.items()) if own else ()


def _of_procedure(procedure: Procedure) -> Iterator[Part]:
    yield from ((f"step-{name}", step.action) for name, step in procedure.steps.items())
    yield from ((f"caution-{name}", caution.hazard) for name, caution in procedure.cautions.items())
    yield from ((f"stop-{name}", rule.when) for name, rule in procedure.stops.items())
    yield from ((f"fault-{name}", fault.sign) for name, fault in procedure.faults.items())
