"""Units that may be written, and how a measured thing is shown."""

from __future__ import annotations

from typing import Literal

from generator.model.entry import Entry, Facts, Symbol, Title, UnitText, Verbatim


class Unit(Entry):
    """A unit text that content may use. `base` makes it a dimension of its own, such as a counted thing."""

    symbol: Symbol
    plural: Symbol = ""
    pattern: Symbol = ""
    """How it stands with its number `#`, where that is not number, space, symbol: `$#/lb`, `#%`."""
    base: bool = False
    definition: str = ""
    """What it is in terms of other units, where the unit library does not know it."""
    also: tuple[Verbatim, ...] = ()
    """Other ways in which people write it."""


class Shown(Entry):
    """The unit a person sees, and how many digits stand behind the point."""

    unit: UnitText
    digits: int = 0


class Measure(Entry):
    """What a quantity measures: its SI unit, and how it is shown in each system of units."""

    title: Title
    unit: UnitText
    point: bool = False
    """True for a temperature as read on a thermometer, false for a difference of temperatures."""
    form: Literal["number", "parts", "clock", "duration", "member"] = "number"
    """`parts`: whole things and parts of them, so noughts behind the point are left out. `member`: no number at all but
    the id of a member of a set, as `argmin` gives it."""
    us: Shown
    metric: Shown
    counts: tuple[Verbatim, ...] = ()
    """What it counts, as sentences call it: how many there are is a quantity, and stands by its id."""
    in_words: tuple[Verbatim, ...] = ()
    """Phrases in which a number of them is part of how a thing is done, and so stays in words."""
    note: Facts = ""
