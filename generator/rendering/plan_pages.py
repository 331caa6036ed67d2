"""Pages on which the plan is looked at, asked and passed on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from generator.telling import addresses
from generator.telling.edition import Edition


def plan_pages(edition: Edition) -> Iterator[tuple[str, str, dict[str, Any]]]:
    """Template, address and parts of each page for which content has something to show, in the order of the menu."""
    library = edition.library
    if library.supplies:
        bought = {name: supply for name, supply in library.supplies.items() if supply.amount}
        yield "shop", addresses.SHOP, {"supplies": bought}
    if library.crews:
        yield "crew", addresses.CREW, {"crews": _in_order(library.crews)}
    if library.views:
        yield "views", addresses.VIEWS, {"views": _in_order(library.views)}
    if library.questions:
        yield "questions", addresses.QUESTIONS, {"questions": _in_order(library.questions)}
    yield "pass_on", addresses.PASS_ON, {}
    yield "sheet", addresses.SHEET, {}


def _in_order(entries: Mapping[str, Any]) -> list[tuple[str, Any]]:
    return sorted(entries.items(), key=lambda item: int(item[1].order))
