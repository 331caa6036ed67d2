"""Whether a formula makes sense, before any value is known: dimensions, temperatures as read, truths and words."""

from __future__ import annotations

from fractions import Fraction
from functools import singledispatchmethod

from generator.formula import tree
from generator.formula.agreement import Agreement
from generator.formula.fault import FormulaFault
from generator.formula.kinds import BARE, TRUTH, Kind, Measured, Word
from generator.formula.scope import Scope
from generator.units.dimension import PLAIN


def check(node: tree.Node, scope: Scope) -> Kind:
    """What a formula gives. Raises FormulaFault where its parts do not fit."""
    return Checker(scope).kind(node)


def check_gives(node: tree.Node, wanted: Kind, scope: Scope) -> None:
    """Raises FormulaFault where the formula gives something other than wanted."""
    checker = Checker(scope)
    found = checker.kind(node)
    if found != wanted:
        hint = checker.bare_hint((node,), wanted)
        raise FormulaFault(f"the formula gives {checker.say(found)}, not {checker.say(wanted)}", hint, *node.at)


class Checker(Agreement):
    """Goes through a tree from the leaves up."""

    @singledispatchmethod
    def kind(self, node: tree.Node) -> Kind:
        """The kind of a node."""
        raise TypeError(type(node))

    @kind.register(tree.Number | tree.Value | tree.Local)
    def _leaf(self, node: tree.Number | tree.Value | tree.Local) -> Kind:
        return node.kind

    @kind.register
    def _option(self, node: tree.Option) -> Kind:
        return Word(frozenset([node.id]))

    @kind.register
    def _negative(self, node: tree.Negative) -> Kind:
        return self.difference(node.of)

    @kind.register
    def _not(self, node: tree.Not) -> Kind:
        return self.truth(node.of)

    @kind.register
    def _arithmetic(self, node: tree.Arithmetic) -> Kind:
        if node.sign in "*/":
            left, right = self.difference(node.left), self.difference(node.right)
            product = left.dimension * right.dimension if node.sign == "*" else left.dimension / right.dimension
            return Measured(product)
        left, right = self.measured(node.left), self.measured(node.right)
        self.same_dimension(node, left, right)
        if node.sign == "+" and left.point and right.point:
            raise FormulaFault("two temperatures as read cannot be added", "a difference may be added to one", *node.at)
        if node.sign == "-" and right.point and not left.point:
            hint = "the other way round it gives a temperature"
            raise FormulaFault("a temperature as read cannot be taken from a difference", hint, *node.at)
        return Measured(left.dimension, left.point != right.point)

    @kind.register
    def _power(self, node: tree.Power) -> Kind:
        return Measured(self.difference(node.base).dimension ** node.exponent)

    @kind.register
    def _comparison(self, node: tree.Comparison) -> Kind:
        left, right = self.kind(node.left), self.kind(node.right)
        if isinstance(left, Word) and isinstance(right, Word):
            if node.sign not in ("==", "!="):
                raise FormulaFault("options are compared with `==` or `!=`", "", *node.at)
            return TRUTH
        self.same(node, (node.left, node.right))
        return TRUTH

    @kind.register
    def _logic(self, node: tree.Logic) -> Kind:
        for part in node.parts:
            self.truth(part)
        return TRUTH

    @kind.register
    def _conditional(self, node: tree.Conditional) -> Kind:
        self.truth(node.test)
        return self.same(node, (node.then, node.otherwise))

    @kind.register
    def _call(self, node: tree.Call) -> Kind:
        if node.name in ("min", "max"):
            return self.same(node, node.arguments)
        found = self.difference(node.arguments[0])
        if node.name == "abs":
            return found
        if node.name == "sqrt":
            return Measured(found.dimension ** Fraction(1, 2))
        if found.dimension != PLAIN:
            hint = f"divide it by a value of its own unit: `x / 1[{self.book.name(found.dimension)}]`"
            raise FormulaFault(f"`{node.name}` takes a bare number, not {self.say(found)}", hint, *node.arguments[0].at)
        return BARE

    @kind.register
    def _in_unit(self, node: tree.InUnit) -> Kind:
        found = self.measured(node.of)
        if found.dimension != self.book.dimension(node.unit):
            raise FormulaFault(f"{self.say(found)} has no number in `{node.unit}`", "", *node.at)
        if self.book.reads_a_point(node.unit) and not found.point:
            hint = f"write `delta_{node.unit}` or `K`"
            raise FormulaFault(f"a difference of temperatures has no number in `{node.unit}`", hint, *node.at)
        return BARE

    @kind.register
    def _lookup(self, node: tree.Lookup) -> Kind:
        table = self.scope.tables[node.table]
        for given, wanted in zip(node.arguments, table.axes, strict=True):
            self.takes(node.table, given, wanted)
        return table.kind

    @kind.register
    def _apply(self, node: tree.Apply) -> Kind:
        function = self.scope.functions[node.function]
        for given, argument in zip(node.arguments, function.arguments, strict=True):
            self.takes(node.function, given, BARE if argument.number_of else argument.kind)
        return function.kind

    @kind.register
    def _over(self, node: tree.Over) -> Kind:
        span = self.same(node, (node.low, node.high))
        body = self.difference(node.body)
        if not isinstance(span, Measured):
            raise FormulaFault("a span goes from one number to another", "", *node.at)
        return span if node.name == "root" else Measured(body.dimension * span.dimension)

    @kind.register
    def _pick(self, node: tree.Pick) -> Kind:
        if not isinstance(self.same(node, node.values), Measured):
            raise FormulaFault(f"`{node.name}` compares numbers", "", *node.at)
        return Word(frozenset(node.members))

    @kind.register
    def _allot(self, node: tree.Allot) -> Kind:
        if self.kind(node.total) != BARE:
            raise FormulaFault("the total to allot is a bare number", "", *node.total.at)
        work, cap = self.same(node, node.works), self.same(node, node.caps)
        if not (isinstance(work, Measured) and isinstance(cap, Measured)) or work.point or cap.point:
            raise FormulaFault("`allot` shares out work", "", *node.at)
        if work.dimension * cap.dimension != PLAIN:
            fault = f"a work of {self.say(work)} does not go with a cap of {self.say(cap)}"
            raise FormulaFault(fault, "one divided by the work is what the cap limits", *node.at)
        return BARE
