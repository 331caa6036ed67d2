"""Whether a formula makes sense, before any value is known: dimensions, temperatures as read, truths and words."""

from __future__ import annotations

from fractions import Fraction
from functools import singledispatchmethod

from generator.formula import tree
from generator.formula.fault import FormulaFault
from generator.formula.kinds import BARE, TRUTH, Kind, Measured, Truth, Word
from generator.formula.scope import Scope
from generator.units.book import UnitBook
from generator.units.dimension import PLAIN

_KEEP_DIMENSION = ("abs", "min", "max")
_DIFFERENCE = "take a difference of two temperatures, or the bare `number(x, degC)`"


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


class Checker:
    """Goes through a tree from the leaves up."""

    def __init__(self, scope: Scope) -> None:
        self.scope = scope
        self.book: UnitBook = scope.book

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
        self._same_dimension(node, left, right)
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
        self._same(node, (node.left, node.right))
        return TRUTH

    @kind.register
    def _logic(self, node: tree.Logic) -> Kind:
        for part in node.parts:
            self.truth(part)
        return TRUTH

    @kind.register
    def _conditional(self, node: tree.Conditional) -> Kind:
        self.truth(node.test)
        return self._same(node, (node.then, node.otherwise))

    @kind.register
    def _call(self, node: tree.Call) -> Kind:
        if node.name in ("min", "max"):
            return self._same(node, node.arguments)
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
            self._takes(node.table, given, wanted)
        return table.kind

    @kind.register
    def _apply(self, node: tree.Apply) -> Kind:
        function = self.scope.functions[node.function]
        for given, argument in zip(node.arguments, function.arguments, strict=True):
            self._takes(node.function, given, BARE if argument.number_of else argument.kind)
        return function.kind

    @kind.register
    def _over(self, node: tree.Over) -> Kind:
        span = self._same(node, (node.low, node.high))
        body = self.difference(node.body)
        if not isinstance(span, Measured):
            raise FormulaFault("a span goes from one number to another", "", *node.at)
        return span if node.name == "root" else Measured(body.dimension * span.dimension)

    @kind.register
    def _pick(self, node: tree.Pick) -> Kind:
        if not isinstance(self._same(node, node.values), Measured):
            raise FormulaFault(f"`{node.name}` compares numbers", "", *node.at)
        return Word(frozenset(node.members))

    @kind.register
    def _allot(self, node: tree.Allot) -> Kind:
        if self.kind(node.total) != BARE:
            raise FormulaFault("the total to allot is a bare number", "", *node.total.at)
        work, cap = self._same(node, node.works), self._same(node, node.caps)
        if not (isinstance(work, Measured) and isinstance(cap, Measured)) or work.point or cap.point:
            raise FormulaFault("`allot` shares out work", "", *node.at)
        if work.dimension * cap.dimension != PLAIN:
            fault = f"a work of {self.say(work)} does not go with a cap of {self.say(cap)}"
            raise FormulaFault(fault, "one divided by the work is what the cap limits", *node.at)
        return BARE

    def measured(self, node: tree.Node) -> Measured:
        """The kind of a node that must be a number."""
        found = self.kind(node)
        if isinstance(found, Measured):
            return found
        raise FormulaFault(f"{self.say(found)} stands where a number is needed", "", *node.at)

    def difference(self, node: tree.Node) -> Measured:
        """The kind of a node that must be a number and no temperature as read."""
        found = self.measured(node)
        if found.point:
            raise FormulaFault("a temperature as read cannot be reckoned with here", _DIFFERENCE, *node.at)
        return found

    def truth(self, node: tree.Node) -> Truth:
        """The kind of a node that must be true or false."""
        found = self.kind(node)
        if isinstance(found, Truth):
            return found
        raise FormulaFault(
            f"{self.say(found)} stands where a condition is needed", "compare it with something", *node.at
        )

    def say(self, kind: Kind) -> str:
        """A kind in words."""
        if isinstance(kind, Truth):
            return "a condition"
        if isinstance(kind, Word):
            return "an option"
        unit = self.book.name(kind.dimension)
        if kind.point:
            return "a temperature as read"
        return "a bare number" if kind.dimension == PLAIN else f"`{unit}`"

    def bare_hint(self, nodes: tuple[tree.Node, ...], wanted: Kind) -> str:
        """What to do where a number stands bare beside values with a unit."""
        bare = next((node for node in nodes if isinstance(node, tree.Number) and node.unit == "1"), None)
        if bare is None or not isinstance(wanted, Measured) or wanted.dimension == PLAIN:
            return ""
        unit = "degC" if wanted.point else self.book.name(wanted.dimension)
        return f"give the number its unit: `{bare.text}[{unit}]`"

    def _takes(self, name: str, given: tree.Node, wanted: Measured) -> None:
        found = self.kind(given)
        if found != wanted:
            raise FormulaFault(f"`{name}` takes {self.say(wanted)} here, not {self.say(found)}", "", *given.at)

    def _same(self, node: tree.Node, nodes: tuple[tree.Node, ...]) -> Kind:
        first = self.kind(nodes[0])
        for other in nodes[1:]:
            found = self.kind(other)
            if isinstance(first, Measured) and isinstance(found, Measured):
                self._same_dimension(node, first, found, (nodes[0], other))
                if first.point != found.point:
                    fault = "a temperature as read and a difference of temperatures do not go together"
                    raise FormulaFault(fault, "", *node.at)
            elif type(first) is not type(found):
                raise FormulaFault(f"{self.say(first)} and {self.say(found)} do not go together", "", *node.at)
        return first

    def _same_dimension(
        self, node: tree.Node, left: Measured, right: Measured, nodes: tuple[tree.Node, ...] = ()
    ) -> None:
        if left.dimension != right.dimension:
            nodes = nodes or tuple(tree.parts(node))
            hint = self.bare_hint(nodes, left) or self.bare_hint(nodes, right)
            raise FormulaFault(f"{self.say(left)} and {self.say(right)} do not go together", hint, *node.at)
