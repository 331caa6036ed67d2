"""Pages on which the plan is looked at, asked and passed on."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rendering.pages import Page
from generator.telling import addresses
from generator.telling.edition import Edition


def plan_pages(edition: Edition) -> Iterator[Page]:
    """Those for which content has something to show, in the order of the menu."""
    library = edition.library
    bought = {name: supply for name, supply in library.supplies.items() if supply.amount}
    if bought:
        yield _page("shop", addresses.SHOP, supplies=bought)
    if library.crews:
        yield _page("crew", addresses.CREW, crews=_in_order(library.crews))
    if library.views:
        yield _page("views", addresses.VIEWS, views=_in_order(library.views))
    if library.questions:
        yield _page("questions", addresses.QUESTIONS, questions=_in_order(library.questions))
    yield _page("pass_on", addresses.PASS_ON)
    yield _page("sheet", addresses.SHEET)


def _page(name: str, address: str, **parts: object) -> Page:
    head = {"kind": name, "drawn": True}
    return Page(address, name, title_word=f"title_{name}", parts=parts, head=head, in_menu=True)


def _in_order[E](entries: dict[str, E]) -> list[tuple[str, E]]:
    return sorted(entries.items(), key=lambda item: getattr(item[1], "order", 0))
