"""Prints a tree as Python."""

from __future__ import annotations

from typing import Any

from generator.formula import choosing, runtime
from generator.formula.code_printer import CodePrinter
from generator.formula.tree import Node
from generator.units.book import UnitBook

NAMES: dict[str, Any] = {
    **{"abs": abs, "min": min, "max": max, "round": runtime.nearest},
    **{name: getattr(runtime, name) for name in ("over", "power", "exp", "log", "sqrt", "ceil", "floor")},
    **{name: getattr(runtime, name) for name in ("lookup", "integral", "root")},
    **{name: getattr(choosing, name) for name in ("argmin", "argmax", "allot")},
}
"""What a printed formula may call, by the name it uses."""


def to_python(node: Node, book: UnitBook) -> str:
    """An expression; the names in it are NAMES, and `v`, `tables` and `functions`."""
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
