"""Views of the day that are drawn from its numbers, on phones and on paper."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from generator.model.entry import Entry, Identifier, QuantityIdentifier, Sentence, Title, fault
from generator.model.paper import Span
from generator.model.picture import Chart


class Timeline(Entry):
    """Stretches of the day one under the other, and moments that are marked across all of them."""

    spans: dict[Identifier, Span]
    moments: dict[QuantityIdentifier, Title] = {}


class Bars(Entry):
    """Quantities of one measure side by side; the one that stands out is the `least` or the `most`."""

    quantities: dict[QuantityIdentifier, Title]
    marked: Literal["least", "most"]
    mark: Title
    """What is said of the one that stands out."""


class Curve(Chart):
    """A chart whose curve may be uncertain: `band` times, and a `band`th part, are drawn beside it."""

    band: Annotated[float, Field(ge=1, le=10)] = 1


class View(Entry):
    """One picture of the day, with words for those who cannot see it."""

    title: Title
    description: Sentence
    order: int
    timeline: Timeline | None = None
    bars: Bars | None = None
    curve: Curve | None = None

    @model_validator(mode="after")
    def _one_kind(self) -> View:
        given = [name for name in ("timeline", "bars", "curve") if getattr(self, name)]
        if len(given) != 1:
            raise fault("shows " + (" and ".join(given) or "nothing"), "give one of timeline, bars, curve")
        return self
