"""What the two printers of code have in common: brackets round everything, and calls."""

from __future__ import annotations

from abc import ABC, abstractmethod
from functools import singledispatchmethod

from generator.formula import tree
from generator.units.book import UnitBook


class CodePrinter(ABC):
    """Prints a tree as an expression over `v` (values by id), `tables`, `functions`, and what the runtime brings."""

    def __init__(self, book: UnitBook) -> None:
        self.book = book

    @abstractmethod
    def item(self, of: str, name: str) -> str:
        """One of several things by name."""

    @abstractmethod
    def signed(self, left: str, sign: str, right: str) -> str:
        """Two things with a sign between."""

    @abstractmethod
    def conditional(self, then: str, test: str, otherwise: str) -> str:
        """One thing or another."""

    @abstractmethod
    def function_of(self, variable: str, body: str) -> str:
        """A nameless function."""

    @abstractmethod
    def negation(self, of: str) -> str:
        """The opposite of a truth."""

    @singledispatchmethod
    def print(self, node: tree.Node) -> str:
        """The code of a node."""
        raise TypeError(type(node))

    @print.register
    def _number(self, node: tree.Number) -> str:
        return repr(node.value)

    @print.register
    def _value(self, node: tree.Value) -> str:
        return self.item("v", node.id)

    @print.register
    def _local(self, node: tree.Local) -> str:
        return local(node.name)

    @print.register
    def _option(self, node: tree.Option) -> str:
        return f'"{node.id}"'

    @print.register
    def _negative(self, node: tree.Negative) -> str:
        return f"(-{self.print(node.of)})"

    @print.register
    def _not(self, node: tree.Not) -> str:
        return self.negation(self.print(node.of))

    @print.register(tree.Arithmetic | tree.Comparison)
    def _signed(self, node: tree.Arithmetic | tree.Comparison) -> str:
        if node.sign == "/":
            return f"over({self.print(node.left)}, {self.print(node.right)})"
        return self.signed(self.print(node.left), node.sign, self.print(node.right))

    @print.register
    def _power(self, node: tree.Power) -> str:
        return f"power({self.print(node.base)}, {float(node.exponent)!r})"

    @print.register
    def _logic(self, node: tree.Logic) -> str:
        joined = self.print(node.parts[0])
        for part in node.parts[1:]:
            joined = self.signed(joined, node.word, self.print(part))
        return joined

    @print.register
    def _conditional(self, node: tree.Conditional) -> str:
        return self.conditional(self.print(node.then), self.print(node.test), self.print(node.otherwise))

    @print.register
    def _call(self, node: tree.Call) -> str:
        return f"{node.name}({self._list(node.arguments)})"

    @print.register
    def _in_unit(self, node: tree.InUnit) -> str:
        size = self.book.size(node.unit)
        offset = f" - {float(size.offset)!r}" if size.offset else ""
        factor = f" / {float(size.factor)!r}" if size.factor != 1 else ""
        return f"(({self.print(node.of)}{offset}){factor})" if offset or factor else self.print(node.of)

    @print.register
    def _lookup(self, node: tree.Lookup) -> str:
        return f"lookup({self.item('tables', node.table)}, {self._list(node.arguments)})"

    @print.register
    def _apply(self, node: tree.Apply) -> str:
        return f"{self.item('functions', node.function)}({self._list(node.arguments)})"

    @print.register
    def _over(self, node: tree.Over) -> str:
        body = self.function_of(local(node.variable), self.print(node.body))
        return f"{node.name}({body}, {self.print(node.low)}, {self.print(node.high)})"

    @print.register
    def _pick(self, node: tree.Pick) -> str:
        members = ", ".join(f'"{member}"' for member in node.members)
        return f"{node.name}([{members}], [{self._list(node.values)}])"

    @print.register
    def _allot(self, node: tree.Allot) -> str:
        works, caps = self._list(node.works), self._list(node.caps)
        return f"allot({self.print(node.total)}, [{works}], [{caps}])[{node.members.index(node.member)}]"

    def _list(self, nodes: tuple[tree.Node, ...]) -> str:
        return ", ".join(self.print(node) for node in nodes)


def local(name: str) -> str:
    """An argument's name in code; the mark behind it keeps it apart from words of either language."""
    return f"{name}_"
