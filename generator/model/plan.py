"""A farm, its plans, and what watches over them."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from generator.model.entry import (
    Entry,
    FormulaText,
    Identifier,
    InputIdentifier,
    Phrase,
    PlanIdentifier,
    Prose,
    QuantityIdentifier,
    Sentence,
    Title,
    ValueText,
    Verbatim,
)
from generator.model.procedure import Signal
from generator.model.source import Citations

_SITE = r"^https://[A-Za-z0-9.-]+(:[0-9]{1,5})?(/[A-Za-z0-9_~!$&'()*+,;=:@%-][A-Za-z0-9._~!$&'()*+,;=:@%-]*)*/$"
"""A host, maybe a port, and folders in the letters of an address (RFC 3986, sections 3.2 and 3.3), no point first."""


class Plan(Entry):
    """Values for inputs and choices; what is not named keeps its default."""

    title: Title
    help: Prose = ""
    values: dict[InputIdentifier, ValueText] = {}


class Watch(Entry):
    """A warning or a stop: shown while `when` holds."""

    title: Title
    signal: Signal
    stop: bool = False
    """True where the plan must not go ahead as it stands."""
    when: FormulaText
    says: Sentence
    cure: Sentence
    inputs: tuple[InputIdentifier, ...] = ()
    """The inputs that would cure it."""
    source: Citations


class Board(Entry):
    """What is read at one glance: a line about the plan, and numbers under short titles of their own."""

    title: Title
    says: Sentence = ""
    quantities: dict[QuantityIdentifier, Title]


class Contact(Entry):
    """Whom to call."""

    title: Title
    call: Verbatim


class Farm(Entry):
    """Who uses this copy. An overlay sets it."""

    name: Verbatim
    demo: bool = False
    place: Verbatim = ""
    first_units: Literal["us", "metric"]
    languages: tuple[str, ...] = Field(default=("en",), min_length=1, max_length=1)
    """A site is in one; another needs an overlay and a folder of its own."""
    plan: PlanIdentifier
    crew: tuple[Verbatim, ...] = ()
    contacts: dict[Identifier, Contact] = {}
    emergency_call: Verbatim = Field(default="", pattern=r"^[0-9+ -]*$")
    """The number for fire, gas and hurt people. It differs from country to country, so that none can be shared."""
    yard_address: Verbatim = ""
    """Where help is to come, as it is said on the telephone."""
    site_address: str = Field(default="https://example.org/cone-to-cooler/", pattern=_SITE)
    """Over https alone does a phone keep a site."""


class Term(Entry):
    """A word of the trade, explained. Its title is the word as it stands in sentences."""

    title: Title
    says: Prose
    also: tuple[Title, ...] = ()
    """Other forms of the word."""
    never: tuple[Title, ...] = ()
    """Phrases in which the word means something else."""
    instead_of: tuple[Verbatim, ...] = ()
    """Other names of the same thing, which no text uses."""


class Section(Entry):
    """A headed part of a page of prose."""

    title: Title
    says: tuple[Prose, ...]


class Page(Entry):
    """A page of prose, such as cautions or about."""

    title: Title
    order: int
    sections: dict[Identifier, Section]


class Word(Entry):
    """A word or sentence of the interface."""

    says: Phrase


class Pardon(Entry):
    """An entry that a rule lets pass, and why. A pardon no longer needed is itself a problem."""

    rule: Identifier
    entry: Verbatim
    """The entry as `kind/id`."""
    reason: Verbatim
