"""Numbers as pages show them: marked by id, so that the phone can repaint them when the plan changes."""

from __future__ import annotations

from collections.abc import Mapping

from markupsafe import Markup

from generator.computing.items import Item
from generator.telling.edition import Edition
from generator.units.showing import show, show_both

NOTHING = "–"
"""Stands where a number is refused."""


class Figures:
    """Shows quantities and choices of one edition."""

    def __init__(self, edition: Edition) -> None:
        self._edition = edition
        self.items: Mapping[str, Item] = edition.workbook.items
        """Every quantity by its id."""

    def text(self, identifier: str, part: str = "both") -> str:
        """A value as plain text: in `both` systems, in the `first`, or in the `second` where it reads differently."""
        if identifier in self._edition.library.choices:
            return "" if part == "second" else self.option(identifier, str(self._edition.settings[identifier]))
        value = self._edition.day.values.get(identifier, self._edition.settings.get(identifier))
        if value is None:
            return NOTHING
        if isinstance(value, str):
            return "" if part == "second" else self.name_of(value)
        return self.write(value, self.items[identifier], part)

    def write(self, value: float, item: Item, part: str = "both") -> str:
        """An SI value the way its quantity is shown."""
        edition = self._edition
        measure, digits = item.measure, item.quantity.digits
        if part == "both":
            return show_both(value, measure, edition.first, edition.book, digits, edition.translate)
        first, second = (
            show(value, measure, system, edition.book, digits, edition.translate)
            for system in (edition.first, edition.second)
        )
        return first if part == "first" else second if second != first else ""

    def read(self, text: str, item: Item) -> float:
        """A value text of content, in SI."""
        return self._edition.book.read(text, item.measure)

    def mark(self, identifier: str, part: str = "both") -> Markup:
        """A value as an element the phone repaints; of a choice, the title of its option."""
        if identifier in self._edition.library.choices:
            return Markup('<b data-choice="{}">{}</b>').format(identifier, self.text(identifier))
        if part == "second" and not self._reads_differently(identifier):
            return Markup("")
        shown = Markup("") if part == "both" else Markup(' data-show="{}"').format(part)
        return Markup('<b data-quantity="{}"{}>{}</b>').format(identifier, shown, self.text(identifier, part))

    def _reads_differently(self, identifier: str) -> bool:
        """Whether the two systems show a quantity in different units at all."""
        measure = self.items[identifier].measure
        return measure.form == "number" and measure.us != measure.metric

    def option(self, choice: str, option: str) -> str:
        """The title of a choice's option."""
        return self._edition.translate(self._edition.library.choices[choice].options[option].title)

    def title_of(self, identifier: str) -> str:
        """The title of a quantity or choice; of one that is declared for each of a set, with its member's title."""
        translate, library = self._edition.translate, self._edition.library
        if identifier in library.choices:
            return translate(library.choices[identifier].title)
        item = self.items[identifier]
        return translate(item.quantity.title).replace("{member}", self.name_of(item.member))

    def name_of(self, member: str) -> str:
        """The title of a member of a set, which is what some quantities have for a value."""
        title = self._edition.library.member_titles.get(member)
        return self._edition.translate(title) if title else member
