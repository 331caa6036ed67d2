"""Sets that formulas go through."""

from __future__ import annotations

from generator.model.entry import Entry, Identifier, Title


class Member(Entry):
    """One member of a set."""

    title: Title


class NumberSet(Entry):
    """A list of ids to go through: `rate[each] for each in line_station` reads `rate_<member>`."""

    title: Title
    members: dict[Identifier, Member]
