"""What parts of a formula must agree on, and what is said where they do not."""

from __future__ import annotations

from abc import ABC, abstractmethod

from generator.formula import tree
from generator.formula.fault import FormulaFault
from generator.formula.kinds import Kind, Measured, Truth, Word
from generator.formula.scope import Scope
from generator.units.dimension import PLAIN

_DIFFERENCE = "take a difference of two temperatures, or the bare `number(x, degC)`"


class Agreement(ABC):
    """Asks nodes for kinds, and refuses what does not fit."""

    def __init__(self, scope: Scope) -> None:
        self.scope = scope
        self.book = scope.book

    @abstractmethod
    def kind(self, node: tree.Node) -> Kind:
        """The kind of a node."""

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

    def takes(self, name: str, given: tree.Node, wanted: Measured) -> None:
        """Refuse an argument that is not what a table or a function takes."""
        found = self.kind(given)
        if found != wanted:
            raise FormulaFault(f"`{name}` takes {self.say(wanted)} here, not {self.say(found)}", "", *given.at)

    def same(self, node: tree.Node, nodes: tuple[tree.Node, ...]) -> Kind:
        """The kind that all of the nodes have; refused where they differ."""
        first = self.kind(nodes[0])
        for other in nodes[1:]:
            found = self.kind(other)
            if isinstance(first, Measured) and isinstance(found, Measured):
                self.same_dimension(node, first, found, (nodes[0], other))
                if first.point != found.point:
                    fault = "a temperature as read and a difference of temperatures do not go together"
                    raise FormulaFault(fault, "", *node.at)
            elif type(first) is not type(found):
                raise FormulaFault(f"{self.say(first)} and {self.say(found)} do not go together", "", *node.at)
        return first

    def same_dimension(
        self, node: tree.Node, left: Measured, right: Measured, nodes: tuple[tree.Node, ...] = ()
    ) -> None:
        """Refuse two values that measure different things."""
        if left.dimension != right.dimension:
            nodes = nodes or tuple(tree.parts(node))
            hint = self.bare_hint(nodes, left) or self.bare_hint(nodes, right)
            raise FormulaFault(f"{self.say(left)} and {self.say(right)} do not go together", hint, *node.at)
