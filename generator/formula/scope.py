"""What the names in a formula may stand for."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.formula.kinds import Measured, Word
from generator.units.book import UnitBook


@dataclass(frozen=True)
class Argument:
    """A name that only one function knows. With `number_of` it is the bare number of such units."""

    name: str
    kind: Measured
    number_of: str = ""


@dataclass(frozen=True)
class Function:
    """A declared function, as seen by those who call it."""

    name: str
    arguments: tuple[Argument, ...]
    kind: Measured


@dataclass(frozen=True)
class Table:
    """A table, as seen by those who read it: what each axis takes, and what comes out."""

    name: str
    axes: tuple[Measured, ...]
    kind: Measured


@dataclass(frozen=True)
class Scope:
    """Everything a formula may name; `member` is set while a formula is written out for one member of a set."""

    book: UnitBook
    values: Mapping[str, Measured | Word] = field(default_factory=dict)
    sets: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    functions: Mapping[str, Function] = field(default_factory=dict)
    tables: Mapping[str, Table] = field(default_factory=dict)
    arguments: Mapping[str, Argument] = field(default_factory=dict)
    member: str = ""
