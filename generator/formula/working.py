"""A working laid out in rows: what is worked out, then its formula, long sums and products one part a row."""

from __future__ import annotations

from dataclasses import dataclass

from generator.formula import tree
from generator.formula.kinds import BARE
from generator.formula.maths import PRODUCT, SUM, Piece, sign, table
from generator.formula.maths_printer import MathsPrinter
from generator.formula.numbers_printer import NumbersPrinter
from generator.formula.wording import Wording
from generator.formula.words_printer import WordsPrinter

_WIDEST = 48
"""Characters in one row on a phone; what is wider scrolls."""


@dataclass(frozen=True)
class Working:
    """Two MathML elements: the formula in words, and with numbers in SI up to the result."""

    words: str
    numbers: str


def show_working(name: str, formula: tree.Node, wording: Wording) -> Working:
    """The working of a quantity."""
    in_words, with_numbers = WordsPrinter(wording), NumbersPrinter(wording)
    head = in_words.print(tree.Value((0, 0), name, BARE)).markup
    rows = [(lead or sign("="), part) for lead, part in _rows(formula, in_words)]
    result = (sign("="), with_numbers.quantity(name).markup)
    numbers = [(lead or sign("="), part) for lead, part in _rows(formula, with_numbers)]
    return Working(
        _block([(head, *rows[0]), *(("", *each) for each in rows[1:])]),
        _block([(head, *numbers[0]), *(("", *each) for each in [*numbers[1:], result])]),
    )


def _block(rows: list[tuple[str, ...]]) -> str:
    return f'<math display="block">{table(rows, "working")}</math>'


def _rows(formula: tree.Node, printer: MathsPrinter) -> list[tuple[str, str]]:
    """The parts of a formula with the sign before each; the first has none."""
    whole = printer.print(formula)
    signs = "+-" if isinstance(formula, tree.Arithmetic) and formula.sign in "+-" else "*"
    if whole.width <= _WIDEST or not isinstance(formula, tree.Arithmetic) or formula.sign == "/":
        return [("", whole.markup)]
    return _parts(formula, signs, printer)


def _parts(node: tree.Node, signs: str, printer: MathsPrinter) -> list[tuple[str, str]]:
    if isinstance(node, tree.Arithmetic) and node.sign in signs:
        shown = {"+": "+", "-": "−", "*": "×"}[node.sign]
        right: Piece = printer.print(node.right)
        return [*_parts(node.left, signs, printer), (sign(shown), right.at_least(PRODUCT))]
    return [("", printer.print(node).at_least(SUM if signs == "+-" else PRODUCT))]
