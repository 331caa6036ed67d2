"""The tree that a formula becomes. Loops over sets are already written out, and every leaf knows its kind."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, fields
from fractions import Fraction
from typing import Literal

from generator.formula.kinds import Measured, Word


@dataclass(frozen=True)
class Node:
    """`at` is where it stands in the text: first column, counted from 1, and the column after its last."""

    at: tuple[int, int] = field(compare=False)


@dataclass(frozen=True)
class Number(Node):
    """A constant as written, with its unit, and its value in SI."""

    text: str
    unit: str
    value: float
    kind: Measured


@dataclass(frozen=True)
class Value(Node):
    """A quantity or a choice, by id."""

    id: str
    kind: Measured | Word


@dataclass(frozen=True)
class Local(Node):
    """An argument of a function, or what an integral or a root runs over."""

    name: str
    kind: Measured
    number_of: str = ""


@dataclass(frozen=True)
class Option(Node):
    """An option of a choice, or a member of a set, standing for itself; `of` is the value it is compared with."""

    id: str
    of: str


@dataclass(frozen=True)
class Negative(Node):
    """Minus something."""

    of: Node


@dataclass(frozen=True)
class Not(Node):
    """The opposite of a truth."""

    of: Node


@dataclass(frozen=True)
class Arithmetic(Node):
    """Two values added, subtracted, multiplied or divided."""

    sign: Literal["+", "-", "*", "/"]
    left: Node
    right: Node


@dataclass(frozen=True)
class Power(Node):
    """A value to a fixed power."""

    base: Node
    exponent: Fraction


@dataclass(frozen=True)
class Comparison(Node):
    """Two values compared."""

    sign: Literal["<", "<=", ">", ">=", "==", "!="]
    left: Node
    right: Node


@dataclass(frozen=True)
class Logic(Node):
    """Truths joined."""

    word: Literal["and", "or"]
    parts: tuple[Node, ...]


@dataclass(frozen=True)
class Conditional(Node):
    """One value or another, as a truth decides; what decides is looked at first."""

    test: Node
    then: Node
    otherwise: Node


@dataclass(frozen=True)
class Call(Node):
    """A function that the language itself brings."""

    name: str
    arguments: tuple[Node, ...]


@dataclass(frozen=True)
class InUnit(Node):
    """The bare number of a value in a unit."""

    of: Node
    unit: str


@dataclass(frozen=True)
class Lookup(Node):
    """A table read by straight lines."""

    table: str
    arguments: tuple[Node, ...]


@dataclass(frozen=True)
class Apply(Node):
    """A declared function with its arguments."""

    function: str
    arguments: tuple[Node, ...]


@dataclass(frozen=True)
class Over(Node):
    """An integral over a span, or the root in it."""

    name: Literal["integral", "root"]
    variable: str
    body: Node
    low: Node
    high: Node


@dataclass(frozen=True)
class Pick(Node):
    """The member with the least or the greatest value."""

    name: Literal["argmin", "argmax"]
    members: tuple[str, ...]
    values: tuple[Node, ...]


@dataclass(frozen=True)
class Allot(Node):
    """How many of a total one member gets, when all are shared out for the highest rate of the slowest."""

    total: Node
    works: tuple[Node, ...]
    caps: tuple[Node, ...]
    members: tuple[str, ...]
    member: str


def parts(node: Node) -> Iterator[Node]:
    """The nodes directly below."""
    for each in fields(node):
        inside = getattr(node, each.name)
        yield from (part for part in (inside if isinstance(inside, tuple) else (inside,)) if isinstance(part, Node))


def walk(node: Node) -> Iterator[Node]:
    """The node and all below it, in the order written."""
    yield node
    for part in parts(node):
        yield from walk(part)


def names(node: Node) -> tuple[str, ...]:
    """The quantities and choices used, each once, in the order in which they are looked at."""
    return tuple(dict.fromkeys(each.id for each in walk(node) if isinstance(each, Value)))


def calls(node: Node) -> tuple[str, ...]:
    """The declared functions used, each once, in the order written."""
    return tuple(dict.fromkeys(each.function for each in walk(node) if isinstance(each, Apply)))
