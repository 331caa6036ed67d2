"""Prints a tree as MathML in words: titles of quantities, and constants as their source writes them."""

from __future__ import annotations

from generator.formula import tree
from generator.formula.maths import FRACTION, SUM, Piece, name
from generator.formula.maths_printer import MathsPrinter


class WordsPrinter(MathsPrinter):
    """The working in words."""

    def value(self, node: tree.Value) -> Piece:  # noqa: D102
        return Piece(FRACTION, name(self.wording.title(node.id)))

    def number(self, node: tree.Number) -> Piece:  # noqa: D102
        written = node.text.replace("-", "−")
        return self.with_unit(f"<mn>{written}</mn>", node.unit, SUM if written.startswith("−") else FRACTION)

    def value_in_unit(self, node: tree.Value, unit: str) -> Piece:  # noqa: D102
        return self.in_unit(self.value(node), unit)
