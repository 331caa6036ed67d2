"""A working laid out in rows: long sums and products one part a row, and with numbers the result at the end."""

from __future__ import annotations

from dataclasses import dataclass

from generator.formula import tree
from generator.formula.maths import sign, table
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
    equals = sign("=")
    result = (equals, with_numbers.quantity(name).markup)
    return Working(_block(in_words.parts(formula, equals)), _block([*with_numbers.parts(formula, equals), result]))


def show_in_words(formula: tree.Node, wording: Wording) -> str:
    """A formula in words alone, as one MathML element."""
    return _block(WordsPrinter(wording).parts(formula, sign("=")))


def _block(rows: list[tuple[str, str]]) -> str:
    return f'<math display="block">{table([*rows], "working")}</math>'
