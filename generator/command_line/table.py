"""The numbers of a plan as a table a person reads."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from generator.computing.items import Item
from generator.telling.alerts import alerts
from generator.telling.edition import Edition
from generator.telling.figures import Figures

Row = tuple[str, str, str]


def print_table(edition: Edition) -> None:
    """Stops and warnings first, then each group with title, value in both systems of units, and what it uses."""
    for line in alerts(edition):
        print(as_typed(line))
    groups = edition.library.groups
    rows = sorted(_rows(edition), key=lambda row: groups[row[0]].order)
    widths = [max(len(row[1][column]) for row in rows) for column in range(2)]
    for group, members in groupby(rows, key=lambda row: row[0]):
        print(f"\n{groups[group].title}")
        for _, (title, value, uses) in members:
            print(as_typed(f"  {title:<{widths[0]}}  {value:<{widths[1]}}  {uses}".rstrip()))


def as_typed(text: str) -> str:
    """With plain spaces, so that what is printed can be searched for."""
    return text.replace("\u00a0", " ")


def titled(item: Item, edition: Edition) -> str:
    """The title of a quantity, with the member it is for in its place."""
    return item.quantity.title.replace("{member}", edition.library.member_titles.get(item.member, ""))


def _rows(edition: Edition) -> Iterator[tuple[str, Row]]:
    figures = Figures(edition)
    for name, choice in edition.library.choices.items():
        yield choice.group, (choice.title, figures.option(name, str(edition.settings[name])), name)
    for name, item in edition.workbook.items.items():
        uses = ", ".join(edition.workbook.uses(name))
        row = (titled(item, edition), figures.text(name), f"{name} from {uses}" if uses else name)
        yield item.quantity.group, row
