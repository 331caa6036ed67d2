"""What the two printers of workings have in common: the shape of a formula in MathML."""

from __future__ import annotations

from abc import ABC, abstractmethod
from fractions import Fraction
from functools import singledispatchmethod

from generator.formula import tree
from generator.formula.kinds import Word
from generator.formula.maths import (
    ATOM,
    FRACTION,
    LOOSE,
    NO_BREAK,
    POWER,
    PRODUCT,
    SUM,
    WIDEST,
    Piece,
    bracketed,
    fraction,
    listed,
    name,
    row,
    sign,
    table,
    width,
    words,
)
from generator.formula.wording import Wording

_SIGNS = {"<": "<", "<=": "≤", ">": ">", ">=": "≥", "==": "=", "!=": "≠", "-": "−", "*": "×"}
_NAMED = {
    "min": "smallest of",
    "max": "largest of",
    "ceil": "rounded up",
    "floor": "rounded down",
    "round": "rounded",
    "log": "ln",
}


class MathsPrinter(ABC):
    """Prints a tree as MathML; what stands for a value is left to those below."""

    def __init__(self, wording: Wording) -> None:
        self.wording = wording
        self.translate = wording.translate

    @abstractmethod
    def value(self, node: tree.Value) -> Piece:
        """A quantity or a choice."""

    @abstractmethod
    def number(self, node: tree.Number) -> Piece:
        """A constant."""

    @abstractmethod
    def value_in_unit(self, node: tree.Value, unit: str) -> Piece:
        """The bare number of a quantity in a unit."""

    def with_unit(self, number: str, unit: str, hold: int = FRACTION) -> Piece:
        """A number element with its unit behind it."""
        shown = self.wording.sign_of(unit, one=">1<" in number)
        if shown:
            return Piece(hold, row(number, words(NO_BREAK + shown)))
        return Piece(hold if hold == SUM else ATOM, number)

    def alone(self, node: tree.Node) -> str:
        """What stands by itself, as in brackets or above a bar; a wide sum or product takes a row for each part."""
        rows = self.parts(node)
        return self.print(node).markup if len(rows) == 1 else table([*rows], "working")

    def held(self, node: tree.Node, hold: int) -> str:
        """What stands beside other signs, in brackets where it holds less than it must."""
        piece = self.print(node)
        return piece.markup if piece.hold >= hold else bracketed(self.alone(node))

    def parts(self, node: tree.Node, first: str = "") -> list[tuple[str, str]]:
        """Rows of a sign and what follows it, `first` before the first; one row where all of it is narrow enough."""
        whole = self.print(node).markup
        if not isinstance(node, tree.Arithmetic) or node.sign == "/" or width(whole) <= WIDEST:
            return [(first, whole)]
        return self._parts(node, "*" if node.sign == "*" else "+-", first)

    def _parts(self, node: tree.Node, signs: str, first: str) -> list[tuple[str, str]]:
        if isinstance(node, tree.Arithmetic) and node.sign in signs:
            last = (sign(_SIGNS.get(node.sign, "+")), self.held(node.right, PRODUCT))
            return [*self._parts(node.left, signs, first), last]
        return [(first, self.held(node, PRODUCT if signs == "*" else SUM))]

    @singledispatchmethod
    def print(self, node: tree.Node) -> Piece:
        """The MathML of a node."""
        raise TypeError(type(node))

    @print.register
    def _number(self, node: tree.Number) -> Piece:
        return self.number(node)

    @print.register
    def _value(self, node: tree.Value) -> Piece:
        return self.value(node)

    @print.register
    def _local(self, node: tree.Local) -> Piece:
        return Piece(ATOM, name(node.name.replace("_", " ")))

    @print.register
    def _option(self, node: tree.Option) -> Piece:
        return Piece(ATOM, name(self.wording.option(node.of, node.id)))

    @print.register
    def _negative(self, node: tree.Negative) -> Piece:
        return Piece(SUM, row(sign("−"), self.held(node.of, PRODUCT)))

    @print.register
    def _not(self, node: tree.Not) -> Piece:
        return Piece(LOOSE, row(words(self.translate("not") + NO_BREAK), bracketed(self.print(node.of).markup)))

    @print.register
    def _arithmetic(self, node: tree.Arithmetic) -> Piece:
        if node.sign == "/":
            return Piece(FRACTION, fraction(self.alone(node.left), self.alone(node.right)))
        hold = PRODUCT if node.sign == "*" else SUM
        right = self.held(node.right, PRODUCT)
        return Piece(hold, row(self.held(node.left, hold), sign(_SIGNS.get(node.sign, "+")), right))

    @print.register
    def _power(self, node: tree.Power) -> Piece:
        base, exponent = self.print(node.base), node.exponent
        if exponent == Fraction(1, 2):
            return Piece(ATOM, f"<msqrt>{base.markup}</msqrt>")
        if exponent.numerator == 1 and 2 < exponent.denominator < 10:
            return Piece(ATOM, f"<mroot>{row(base.markup)}<mn>{exponent.denominator}</mn></mroot>")
        return Piece(POWER, f"<msup>{self.held(node.base, ATOM)}{_exponent(exponent)}</msup>")

    @print.register
    def _comparison(self, node: tree.Comparison) -> Piece:
        left, right = self.print(node.left), self.print(node.right)
        between = sign(_SIGNS[node.sign])
        if isinstance(node.left, tree.Value) and isinstance(node.left.kind, Word):
            said = self.translate("is" if node.sign == "==" else "is not")
            between = words(f"{NO_BREAK}{said}{NO_BREAK}")
        return Piece(LOOSE, row(left.at_least(SUM), between, right.at_least(SUM)))

    @print.register
    def _logic(self, node: tree.Logic) -> Piece:
        between = words(f"{NO_BREAK}{self.translate(node.word)}{NO_BREAK}")
        sides = [self.print(part) for part in node.parts]
        inner = [
            bracketed(side.markup) if isinstance(part, tree.Logic) else side.markup
            for part, side in zip(node.parts, sides, strict=True)
        ]
        return Piece(LOOSE, row(between.join(inner)))

    @print.register
    def _conditional(self, node: tree.Conditional) -> Piece:
        cases: list[tuple[str, ...]] = []
        last: tree.Node = node
        while isinstance(last, tree.Conditional):
            test = row(words(self.translate("if") + NO_BREAK), self.print(last.test).markup)
            cases.append((self.print(last.then).markup, test))
            last = last.otherwise
        cases.append((self.print(last).markup, words(self.translate("otherwise"))))
        return Piece(LOOSE, row(sign("{"), table(cases, "cases")))

    @print.register
    def _call(self, node: tree.Call) -> Piece:
        inner = [self.alone(argument) for argument in node.arguments]
        if node.name == "abs":
            return Piece(ATOM, row(sign("|"), inner[0], sign("|")))
        if node.name == "sqrt":
            return Piece(ATOM, f"<msqrt>{inner[0]}</msqrt>")
        if node.name == "exp":
            return Piece(POWER, f"<msup><mi>e</mi>{row(inner[0])}</msup>")
        return Piece(ATOM, listed(words(self.translate(_NAMED[node.name])), inner))

    @print.register
    def _in_unit(self, node: tree.InUnit) -> Piece:
        if isinstance(node.of, tree.Value):
            return self.value_in_unit(node.of, node.unit)
        return self.in_unit(self.print(node.of), node.unit)

    def in_unit(self, of: Piece, unit: str) -> Piece:
        """A quotient by one of the unit; with a thermometer's unit, which cannot be divided by, in words."""
        if not self.wording.book.reads_a_point(unit):
            one = self.with_unit("<mn>1</mn>", unit).markup
            return Piece(FRACTION, fraction(of.markup, one)) if self.wording.sign_of(unit) else of
        said = self.translate("in {unit}").replace("{unit}", self.wording.sign_of(unit))
        return Piece(FRACTION, row(of.at_least(FRACTION), words(NO_BREAK + said)))

    @print.register
    def _lookup(self, node: tree.Lookup) -> Piece:
        inner = [self.alone(argument) for argument in node.arguments]
        return Piece(ATOM, listed(name(self.wording.title(node.table)), inner))

    @print.register
    def _apply(self, node: tree.Apply) -> Piece:
        # an argument stands with its unit, also where the function takes only the number
        inner = [self.alone(each.of if isinstance(each, tree.InUnit) else each) for each in node.arguments]
        return Piece(ATOM, listed(name(self.wording.title(node.function)), inner))

    @print.register
    def _over(self, node: tree.Over) -> Piece:
        low, high = self.print(node.low).markup, self.print(node.high).markup
        variable = name(node.variable.replace("_", " "))
        if node.name == "integral":
            over = f"<munderover>{sign('∫')}{low}{high}</munderover>"
            return Piece(SUM, row(over, self.held(node.body, PRODUCT), sign("d"), variable))
        before, between, after = _around(self.translate("from {low} to {high}"), "{low}", "{high}")
        span = (words(NO_BREAK + before), low, words(between), high, words(after + NO_BREAK))
        where = words(self.translate("where") + NO_BREAK)
        return Piece(LOOSE, row(variable, *span, where, self.print(node.body).markup, sign("="), "<mn>0</mn>"))

    @print.register
    def _pick(self, node: tree.Pick) -> Piece:
        said = self.translate("name of the smallest of" if node.name == "argmin" else "name of the largest of")
        named = [self._of_member(*each) for each in zip(node.members, node.values, strict=True)]
        return Piece(ATOM, listed(words(said), named))

    @print.register
    def _allot(self, node: tree.Allot) -> Piece:
        said = self.translate("share of {member} in the fastest split")
        places = [self._of_member(*each) for each in zip(node.members, node.works, node.caps, strict=True)]
        head = words(said.replace("{member}", self.wording.option("", node.member)))
        return Piece(ATOM, listed(head, [self.print(node.total).markup, *places]))

    def _of_member(self, member: str, *values: tree.Node) -> str:
        inner = sign(",").join(self.print(value).markup for value in values)
        return row(words(self.wording.option("", member) + ":" + NO_BREAK), inner)


def _exponent(exponent: Fraction) -> str:
    """An exponent as a decimal number where it has an end, else as a fraction."""
    minus = sign("−") if exponent < 0 else ""
    size = abs(exponent)
    decimal = f"{float(size):.15g}"
    exact = Fraction(decimal) == size
    number = f"<mn>{decimal}</mn>" if exact else fraction(f"<mn>{size.numerator}</mn>", f"<mn>{size.denominator}</mn>")
    return row(minus, number)


def _around(text: str, first: str, second: str) -> tuple[str, str, str]:
    before, _, rest = text.partition(first)
    between, _, after = rest.partition(second)
    return before, between, after
