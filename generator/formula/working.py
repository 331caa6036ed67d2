"""A working laid out in rows: long sums and products one part a row, and with numbers the result at the end."""

from __future__ import annotations

from dataclasses import dataclass

from generator.formula import tree
from generator.formula.maths import PRODUCT, SUM, WIDEST, sign, table, width
from generator.formula.maths_printer import MathsPrinter
from generator.formula.numbers_printer import NumbersPrinter
from generator.formula.wording import Wording
from generator.formula.words_printer import WordsPrinter


@dataclass(frozen=True)
class Working:
    """Two MathML elements: the formula in words, and with numbers in SI up to the result."""

    words: str
    numbers: str


def show_working(name: str, formula: tree.Node, wording: Wording) -> Working:
    """The working of a quantity."""
    in_words, with_numbers = WordsPrinter(wording), NumbersPrinter(wording)
    result = (sign("="), with_numbers.quantity(name).markup)
    return Working(_block(_rows(formula, in_words)), _block([*_rows(formula, with_numbers), result]))


def show_in_words(formula: tree.Node, wording: Wording) -> str:
    """A formula in words alone, as one MathML element."""
    return _block(_rows(formula, WordsPrinter(wording)))


def _block(rows: list[tuple[str, str]]) -> str:
    return f'<math display="block">{table([*rows], "working")}</math>'


def _rows(formula: tree.Node, printer: MathsPrinter) -> list[tuple[str, str]]:
    """The parts of a formula with the sign before each."""
    whole = printer.print(formula)
    signs = "+-" if isinstance(formula, tree.Arithmetic) and formula.sign in "+-" else "*"
    if width(whole.markup) <= WIDEST or not isinstance(formula, tree.Arithmetic) or formula.sign == "/":
        return [(sign("="), whole.markup)]
    return _parts(formula, signs, printer)


def _parts(node: tree.Node, signs: str, printer: MathsPrinter) -> list[tuple[str, str]]:
    if isinstance(node, tree.Arithmetic) and node.sign in signs:
        shown = {"+": "+", "-": "−", "*": "×"}[node.sign]
        right = printer.print(node.right).at_least(PRODUCT)
        return [*_parts(node.left, signs, printer), (sign(shown), right)]
    return [(sign("="), printer.print(node).at_least(SUM if signs == "+-" else PRODUCT))]
