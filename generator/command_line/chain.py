"""The whole chain of workings behind one quantity, down to inputs and sources."""

from __future__ import annotations

import textwrap

from generator.command_line.table import as_typed, titled
from generator.computing import Settings
from generator.model.source import Citations
from generator.telling.alerts import refusal
from generator.telling.certainty import tell_certainty
from generator.telling.edition import Edition
from generator.telling.figures import Figures

GIVEN = {
    "change": "changed for this run",
    "plan": "from the plan",
    "option": "from a chosen option",
    "default": "where the plan says nothing else",
    "constant": "always",
}


def print_chain(edition: Edition, wanted: str) -> None:
    """The quantity, then all that it rests on, each once, with formula, value and source."""
    figures = Figures(edition)
    for name in _chain(edition, wanted):
        if name in edition.library.choices:
            choice = edition.library.choices[name]
            print(f"{name}  {choice.title}: {figures.option(name, str(edition.settings[name]))}\n")
            continue
        item = edition.workbook.items[name]
        print(f"{name}  {titled(item, edition)}: {as_typed(figures.text(name))}{_given(edition, name)}")
        if name in edition.day.refused:
            print(f"    refused: {as_typed(refusal(edition, name))}")
        parts = [f"with {use} = {as_typed(figures.text(use))}" for use in edition.workbook.uses(name)]
        for line in _working(item.quantity.formula, parts):
            print(f"    {line}")
        if sure := tell_certainty(edition, figures, name):
            most = ", ".join(sure.moved_by)
            print(f"    most likely from {as_typed(sure.low)} to {as_typed(sure.high)}; moved most by: {most}")
        if item.quantity.accuracy:
            print(textwrap.indent(textwrap.fill(f"how sure: {item.quantity.accuracy}", 110), "    "))
        print(f"    source: {_sources(edition, item.quantity.source)}\n")


def _chain(edition: Edition, wanted: str) -> list[str]:
    """Ids from the wanted one down, nearest first, each once."""
    found = [wanted]
    for name in found:  # grows while it is walked
        if name not in edition.library.choices:
            found += [use for use in edition.workbook.uses(name) if use not in found]
    return found


def _given(edition: Edition, name: str) -> str:
    origin = edition.settings.origins.get(name) if isinstance(edition.settings, Settings) else None
    return f" ({GIVEN[origin]})" if origin else ""


def _working(formula: str | None, parts: list[str]) -> list[str]:
    if formula is None:
        return []
    written = textwrap.wrap(" ".join(formula.split()), 110, initial_indent="= ", subsequent_indent="  ")
    return written + parts


def _sources(edition: Edition, citations: Citations) -> str:
    return "; ".join(
        citation.plain or ", ".join(filter(None, (edition.library.sources[str(citation.id)].title, citation.place)))
        for citation in citations
    )
