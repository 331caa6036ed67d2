"""Prints a tree as JavaScript."""

from __future__ import annotations

from generator.formula.code_printer import CodePrinter
from generator.formula.tree import Node
from generator.units.book import UnitBook

_SIGNS = {"==": "===", "!=": "!==", "and": "&&", "or": "||"}


def to_javascript(node: Node, book: UnitBook) -> str:
    """An expression; it names what phone/runtime.js and phone/choosing.js export, and `v`, `tables` and `functions`."""
    return JavascriptPrinter(book).print(node)


class JavascriptPrinter(CodePrinter):
    """The ways in which JavaScript differs."""

    def item(self, of: str, name: str) -> str:  # noqa: D102
        return f"{of}.{name}"

    def signed(self, left: str, sign: str, right: str) -> str:  # noqa: D102
        return f"({left} {_SIGNS.get(sign, sign)} {right})"

    def conditional(self, then: str, test: str, otherwise: str) -> str:  # noqa: D102
        return f"({test} ? {then} : {otherwise})"

    def function_of(self, variable: str, body: str) -> str:  # noqa: D102
        return f"({variable}) => {body}"

    def negation(self, of: str) -> str:  # noqa: D102
        return f"!({of})"
