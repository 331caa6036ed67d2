"""Where a figure comes from."""

from __future__ import annotations

from typing import Annotated, Literal, get_args

from pydantic import AfterValidator, BeforeValidator, model_validator

from generator.model.entry import Entry, Facts, SourceIdentifier, Verbatim, fault

PlainSource = Literal["common practice", "farm's own figure", "from memory", "arithmetic"]
PLAIN_SOURCES: tuple[str, ...] = get_args(PlainSource)
"""What may stand in place of a published source: no source is known; the farm measured or chose it;
remembered but not confirmed; or nothing but arithmetic on other quantities."""


class Source(Entry):
    """A published work, or a rule, that figures are cited from."""

    title: Verbatim
    publisher: Verbatim = ""
    year: int | None = None
    address: Verbatim = ""
    read: Literal["original", "copy", "memory", "computed"]
    """How it was read: the work itself, a copy or quotation of it, from memory, or run as a reference program."""
    read_on: str = ""
    note: Facts = ""


class Citation(Entry):
    """A source by its id with the place in it, or one of PLAIN_SOURCES as `plain`."""

    id: SourceIdentifier | None = None
    place: Verbatim = ""
    memory: bool = False
    plain: PlainSource | None = None

    @model_validator(mode="after")
    def _one_of_both(self) -> Citation:
        if self.id is None and self.plain is None:
            raise fault("names no source", "write {id: ..., place: ...} or one of: " + ", ".join(PLAIN_SOURCES))
        if self.id is not None and self.plain is not None:
            raise fault("names a source and plain words at once", "make it two list items")
        return self


def _as_list(value: object) -> object:
    values = value if isinstance(value, list | tuple) else [value]
    return tuple({"plain": each} if isinstance(each, str) else each for each in values)


def _one_at_least(citations: tuple[Citation, ...]) -> tuple[Citation, ...]:
    if not citations:
        raise fault("holds nothing", "write {id: ..., place: ...} or one of: " + ", ".join(PLAIN_SOURCES))
    return citations


Citations = Annotated[
    tuple[Citation, ...],
    AfterValidator(_one_at_least),
    BeforeValidator(_as_list, json_schema_input_type=PlainSource | Citation | tuple[PlainSource | Citation, ...]),
]
"""One citation or a list of them; plain words may stand alone."""
