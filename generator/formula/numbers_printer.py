"""Prints a tree as MathML with numbers, all in coherent SI units, so that a person can multiply it out by hand."""

from __future__ import annotations

from html import escape

from generator.formula import tree
from generator.formula.kinds import Word
from generator.formula.maths import ATOM, FRACTION, SUM, Piece
from generator.formula.maths_printer import MathsPrinter

REFUSED = "–"


class NumbersPrinter(MathsPrinter):
    """The working with numbers; each element of a quantity names it, so that the phone can repaint it."""

    def value(self, node: tree.Value) -> Piece:  # noqa: D102
        return self.quantity(node.id, isinstance(node.kind, Word))

    def quantity(self, name: str, is_word: bool = False) -> Piece:
        """The value of a quantity or choice as it is now."""
        value = self.wording.values.get(name)
        if is_word or isinstance(value, str):
            said = self.wording.option(name, str(value)) if value is not None else REFUSED
            return Piece(ATOM, f'<mi data-quantity="{name}">{escape(said)}</mi>')
        return self._measured(name, self.wording.unit(name))

    def number(self, node: tree.Number) -> Piece:  # noqa: D102
        unit = self.wording.book.name(node.kind.dimension) if node.unit != "1" else "1"
        hold = SUM if node.value < 0 else FRACTION
        return self.with_unit(f"<mn>{self.wording.write(node.value)}</mn>", unit, hold)

    def value_in_unit(self, node: tree.Value, unit: str) -> Piece:  # noqa: D102
        return self._measured(node.id, unit, bare=True)

    def _measured(self, name: str, unit: str, bare: bool = False) -> Piece:
        value = self.wording.values.get(name)
        number = self.wording.book.from_si(float(value), unit) if value is not None else None
        written = REFUSED if number is None else self.wording.write(number)
        element = f'<mn data-quantity="{name}" data-unit="{unit}">{written}</mn>'
        hold = SUM if number is not None and number < 0 else FRACTION
        return Piece(hold if hold == SUM else ATOM, element) if bare else self.with_unit(element, unit, hold)
