"""Drawings, and charts that are drawn from the day's numbers."""

from __future__ import annotations

from generator.model.entry import Entry, Identifier, QuantityIdentifier, Sentence, Title
from generator.model.source import Citations


class Mark(Entry):
    """A point of a chart worth a name; without `up` a line that stands, without `across` one that lies."""

    title: Title
    across: QuantityIdentifier | None = None
    up: QuantityIdentifier | None = None
    limit: bool = False


class Chart(Entry):
    """A curve: how `read` comes out while `sweep` goes from one value to another and all else stays as planned."""

    sweep: QuantityIdentifier
    begins: QuantityIdentifier | None = None
    """Nothing means zero."""
    ends: QuantityIdentifier
    read: QuantityIdentifier
    across: Title
    up: Title
    marks: dict[Identifier, Mark]


class Picture(Entry):
    """A drawing in the folder of pictures, named by its id, or a chart; with words for those who cannot see it."""

    title: Title
    description: Sentence
    chart: Chart | None = None
    source: Citations
