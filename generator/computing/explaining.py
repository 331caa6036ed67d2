"""How a number came about: its working in words and with numbers."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from generator.formula import Wording, Working, show_in_words, show_working

if TYPE_CHECKING:
    from generator.computing.workbook import Workbook


def explain(
    workbook: Workbook, name: str, values: Mapping[str, float | str], translate: Callable[[str], str]
) -> Working:
    """The working of a result at those values, in the language that `translate` turns English into."""
    return show_working(name, workbook.results[name].formula, _wording(workbook, values, translate, {}))


def explain_function(workbook: Workbook, name: str, translate: Callable[[str], str]) -> str:
    """A declared function in words, as MathML."""
    arguments = {each: translate(entry.title) for each, entry in workbook.library.functions[name].arguments.items()}
    return show_in_words(workbook.functions[name], _wording(workbook, {}, translate, arguments))


def _wording(
    workbook: Workbook,
    values: Mapping[str, float | str],
    translate: Callable[[str], str],
    arguments: Mapping[str, str],
) -> Wording:
    library = workbook.library
    members = library.member_titles

    def title(identifier: str) -> str:
        if identifier in arguments:
            return arguments[identifier]
        if identifier in workbook.items:
            item = workbook.items[identifier]
            whole = translate(item.quantity.title)
            return whole.replace("{member}", translate(members[item.member])) if item.member else whole
        for entries in (library.choices, library.functions, library.tables):
            if identifier in entries:
                return translate(entries[identifier].title)
        return identifier

    def option(choice: str, identifier: str) -> str:
        if choice in library.choices:
            return translate(library.choices[choice].options[identifier].title)
        return translate(members[identifier])

    def unit(identifier: str) -> str:
        return workbook.items[identifier].measure.unit

    return Wording(workbook.book, title, option, unit, values, translate)
