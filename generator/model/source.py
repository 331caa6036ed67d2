"""Where a figure comes from."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BeforeValidator

from generator.model.entry import Entry, Line, Sentence, SourceIdentifier

PLAIN_SOURCES = ("common practice", "farm's own figure", "from memory", "arithmetic")
"""What may stand in place of a published source: no source is known; the farm measured or chose it;
remembered but not confirmed; or nothing but arithmetic on other quantities."""


class Source(Entry):
    """A published work, or a rule, that figures are cited from."""

    title: Sentence
    publisher: Line = ""
    year: int | None = None
    address: Sentence = ""
    read: Literal["original", "copy", "memory", "computed"]
    """How it was read: the work itself, a copy or quotation of it, from memory, or run as a reference program."""
    read_on: str = ""
    note: Sentence = ""


class Citation(Entry):
    """A source by its id with the place in it, or one of PLAIN_SOURCES as `plain`."""

    id: SourceIdentifier | None = None
    place: Line = ""
    memory: bool = False
    plain: Literal["common practice", "farm's own figure", "from memory", "arithmetic"] | None = None


def _as_list(value: object) -> object:
    values = value if isinstance(value, list) else [value]
    return [{"plain": each} if isinstance(each, str) else each for each in values]


Citations = Annotated[tuple[Citation, ...], BeforeValidator(_as_list)]
