"""Prints a tree as Python."""

from __future__ import annotations

from generator.formula.code_printer import CodePrinter
from generator.formula.tree import Node
from generator.units.book import UnitBook


def to_python(node: Node, book: UnitBook) -> str:
    """An expression; the names in it are those of generator.formula.runtime, and `v`, `tables` and `functions`."""
    return PythonPrinter(book).print(node)


class PythonPrinter(CodePrinter):
    """The ways in which Python differs."""

    def item(self, of: str, name: str) -> str:  # noqa: D102
        return f'{of}["{name}"]'

    def signed(self, left: str, sign: str, right: str) -> str:  # noqa: D102
        return f"({left} {sign} {right})"

    def conditional(self, then: str, test: str, otherwise: str) -> str:  # noqa: D102
        return f"({then} if {test} else {otherwise})"

    def function_of(self, variable: str, body: str) -> str:  # noqa: D102
        return f"lambda {variable}: {body}"

    def negation(self, of: str) -> str:  # noqa: D102
        return f"(not {of})"
