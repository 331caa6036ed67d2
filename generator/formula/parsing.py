"""From the text of a formula to its tree. What is not named here is refused."""

from __future__ import annotations

import ast
import re
from fractions import Fraction
from typing import Literal

from generator.formula import tree
from generator.formula.calling import CallReader
from generator.formula.fault import FormulaFault, FormulaFaults
from generator.formula.kinds import Measured, Word
from generator.formula.opening import open_text
from generator.formula.scope import Scope
from generator.problems import did_you_mean
from generator.units.fault import UnitFault

_ARITHMETIC: dict[type[ast.operator], Literal["+", "-", "*", "/"]] = {
    ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/",
}  # fmt: skip
_COMPARISONS: dict[type[ast.cmpop], Literal["<", "<=", ">", ">=", "==", "!="]] = {
    ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">=", ast.Eq: "==", ast.NotEq: "!=",
}  # fmt: skip
_INSTEAD = {
    ast.BitXor: "a power is written `a ** b`",
    ast.FloorDiv: "write `floor(a / b)`",
    ast.Mod: "a share is written `0.15` or `15[percent]`",
    ast.BitAnd: "write `and`",
    ast.BitOr: "write `or`",
}
_DEEPEST = 60
_LARGEST = 5000
_LARGEST_POWER = 12


def parse(text: str, scope: Scope) -> tree.Node:
    """The tree of a formula. Raises FormulaFaults with every unknown name, or with what cannot be read at all."""
    try:
        expression, line = open_text(text)
        parser = Parser(line, scope)
        found = parser.read(expression)
    except FormulaFault as fault:
        raise FormulaFaults([fault]) from None
    if parser.faults:
        raise FormulaFaults(parser.faults)
    return found


class Parser(CallReader):
    """Reads one formula; faults that do not hinder the rest are gathered."""

    def read(self, node: ast.expr) -> tree.Node:
        """The tree below one node of Python's. Raises FormulaFault for what is not in the language."""
        reader = getattr(self, f"_read_{type(node).__name__.lower()}", None)
        if reader is None:
            raise self.refuse(node, f"`{self.text(node)}` is not part of the formula language")
        self.depth += 1
        self.size += 1
        if self.depth > _DEEPEST or self.size > _LARGEST:
            raise self.refuse(node, "the formula is nested too deeply", "divide it into quantities of their own")
        found: tree.Node = reader(node)
        self.depth -= 1
        return found

    def _read_constant(self, node: ast.Constant, unit: str = "1", at: tuple[int, int] | None = None) -> tree.Node:
        text = self.text(node)
        if not re.fullmatch(r"(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,2})?", text):
            raise self.refuse(node, f"`{text}` is not part of the formula language")
        try:
            value = self.scope.book.to_si(Fraction(text.rstrip(".")), unit)
        except UnitFault as fault:
            raise FormulaFault(fault.fault, fault.hint, *(at or self.at(node))) from None
        kind = Measured(self.scope.book.dimension(unit), self.scope.book.reads_a_point(unit))
        return tree.Number(at or self.at(node), text, unit, value, kind)

    def _read_name(self, node: ast.Name) -> tree.Node:
        return self.named(node.id, self.at(node), node.id)

    def _read_subscript(self, node: ast.Subscript) -> tree.Node:
        if isinstance(node.value, ast.Constant):
            start, end = self.at(node.slice)
            unit = self.line[start - 1 : end - 1].strip()
            return self._read_constant(node.value, unit, self.at(node))
        if not isinstance(node.value, ast.Name) or not isinstance(node.slice, ast.Name):
            raise self.refuse(node, f"`{self.text(node)}` is not part of the formula language")
        member = self.members.get(node.slice.id, node.slice.id)
        if member == "member":
            raise self.refuse(node.slice, "`member` is known only in a quantity with `each`")
        return self.named(f"{node.value.id}_{member}", self.at(node), self.text(node))

    def _read_unaryop(self, node: ast.UnaryOp) -> tree.Node:
        of = self.read(node.operand)
        if isinstance(node.op, ast.USub):
            return self._below_nought(of, self.at(node)) or tree.Negative(self.at(node), of)
        if isinstance(node.op, ast.Not):
            return tree.Not(self.at(node), of)
        if isinstance(node.op, ast.UAdd):
            return of
        raise self.refuse(node, f"`{self.text(node)}` is not part of the formula language")

    def _below_nought(self, of: tree.Node, at: tuple[int, int]) -> tree.Node | None:
        """`-60[degC]` is sixty below nought on the scale, not the negative of a temperature."""
        if not isinstance(of, tree.Number) or not of.kind.point:
            return None
        value = self.scope.book.to_si(-Fraction(of.text.rstrip(".")), of.unit)
        return tree.Number(at, f"-{of.text}", of.unit, value, of.kind)

    def _read_binop(self, node: ast.BinOp) -> tree.Node:
        if isinstance(node.op, ast.Pow):
            return tree.Power(self.at(node), self.read(node.left), self._exponent(node.right))
        sign = _ARITHMETIC.get(type(node.op))
        if sign is None:
            fault = f"`{self.text(node)}` is not part of the formula language"
            raise self.refuse(node, fault, _INSTEAD.get(type(node.op), ""))
        return tree.Arithmetic(self.at(node), sign, self.read(node.left), self.read(node.right))

    def _exponent(self, node: ast.expr) -> Fraction:
        exponent = _plain_number(node, self)
        if exponent is None:
            hint = "a power that varies is written `exp(y * log(x))`"
            raise self.refuse(node, "an exponent is a plain number, such as `2`, `0.5` or `(1 / 3)`", hint)
        if abs(exponent) > _LARGEST_POWER:
            raise self.refuse(node, f"the exponent `{self.text(node)}` is too large", "powers go from -12 to 12")
        return exponent

    def _read_compare(self, node: ast.Compare) -> tree.Node:
        sides = [node.left, *node.comparators]
        found = [
            self._comparison(operator, left, right)
            for operator, left, right in zip(node.ops, sides, sides[1:], strict=False)
        ]
        return found[0] if len(found) == 1 else tree.Logic(self.at(node), "and", tuple(found))

    def _comparison(self, operator: ast.cmpop, left: ast.expr, right: ast.expr) -> tree.Node:
        at = (self.at(left)[0], self.at(right)[1])
        sign = _COMPARISONS.get(type(operator))
        if sign is None:
            raise FormulaFault("only `<`, `<=`, `>`, `>=`, `==` and `!=` compare", "", *at)
        first = self.read(left)
        if isinstance(first, tree.Value) and isinstance(first.kind, Word) and isinstance(right, ast.Name):
            return tree.Comparison(at, sign, first, self._option(first.id, first.kind, right))
        return tree.Comparison(at, sign, first, self.read(right))

    def _option(self, choice: str, kind: Word, node: ast.Name) -> tree.Node:
        option = self.members.get(node.id, node.id)
        if option not in kind.options:
            if isinstance(self.scope.values.get(option), Word):
                return self.read(node)
            fault = f"`{choice}` has no option `{option}`"
            options = sorted(kind.options)
            hint = did_you_mean(option, options, "options: " + ", ".join(options))
            self.note(FormulaFault(fault, hint, *self.at(node)))
        return tree.Option(self.at(node), option, choice)

    def _read_boolop(self, node: ast.BoolOp) -> tree.Node:
        word: Literal["and", "or"] = "and" if isinstance(node.op, ast.And) else "or"
        return tree.Logic(self.at(node), word, tuple(self.read(value) for value in node.values))

    def _read_ifexp(self, node: ast.IfExp) -> tree.Node:
        then, test, otherwise = (self.read(part) for part in (node.body, node.test, node.orelse))
        return tree.Conditional(self.at(node), test, then, otherwise)

    def _read_call(self, node: ast.Call) -> tree.Node:
        return self.call(node)


def _plain_number(node: ast.expr, parser: Parser) -> Fraction | None:
    if isinstance(node, ast.Constant) and type(node.value) in (int, float):
        found = parser.read(node)
        return Fraction(found.text.rstrip(".")) if isinstance(found, tree.Number) else None
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        inside = _plain_number(node.operand, parser)
        return None if inside is None else -inside
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Div):
        above, below = _plain_number(node.left, parser), _plain_number(node.right, parser)
        return above / below if above is not None and below else None
    return None
