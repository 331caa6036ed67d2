"""Who stands where, and what is asked of the plan."""

from __future__ import annotations

from typing import Literal

from pydantic import model_validator

from generator.model.entry import (
    Entry,
    Identifier,
    Line,
    ProcedureIdentifier,
    Prose,
    QuantityIdentifier,
    Title,
    fault,
)


class Standing(Entry):
    """A place where people stand: how many do, how many should, and how fast it then is."""

    title: Title
    people: QuantityIdentifier
    """The input that says how many stand there."""
    best: QuantityIdentifier
    more: QuantityIdentifier | None = None
    """How many should stand there if there were one more."""
    rates: tuple[QuantityIdentifier, ...]
    """The slowest of them is the rate of the place."""
    procedure: ProcedureIdentifier | None = None
    also: tuple[ProcedureIdentifier, ...] = ()
    """What else is done at this place: whoever stands there needs the skills for it too."""
    apart: bool = False
    """Works at another time than the rest, and so never holds them up."""


class Crew(Entry):
    """People shared out over places."""

    title: Title
    order: int
    help: Prose = ""
    people: QuantityIdentifier
    """The input that says how many there are."""
    places: dict[Identifier, Standing]
    brings: tuple[QuantityIdentifier, ...] = ()
    """What changes to the crew or to its gear would bring."""


class Search(Entry):
    """Find the `most` or the `least` of an input for which a result stays on one side of what is typed."""

    vary: QuantityIdentifier
    seek: Literal["most", "least"]
    until: QuantityIdentifier
    stays: Literal["at_most", "at_least"]
    start: QuantityIdentifier
    """What stands in the field at first; of the same measure as `until`."""


class Trial(Entry):
    """Give an input another value and read what follows, without changing the plan."""

    give: QuantityIdentifier
    tells: tuple[QuantityIdentifier, ...]


class Question(Entry):
    """Something asked of the plan, answered on the phone."""

    title: Title
    order: int
    asks: Line
    """What stands before the field, such as: pieces that can be done by."""
    search: Search | None = None
    trial: Trial | None = None

    @model_validator(mode="after")
    def _one_kind(self) -> Question:
        if (self.search is None) == (self.trial is None):
            raise fault("has both or none of `search` and `trial`", "give one of the two")
        return self
