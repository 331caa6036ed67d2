"""How calls are read: the language's own functions, tables and declared functions."""

from __future__ import annotations

import ast

from generator.formula import tree
from generator.formula.fault import FormulaFault
from generator.formula.kinds import BARE
from generator.formula.looping import OVER_SETS, OVER_SPANS, LoopReader
from generator.formula.reader import OWN_FUNCTIONS
from generator.formula.scope import Argument
from generator.problems import did_you_mean
from generator.units.fault import UnitFault


class CallReader(LoopReader):
    """The part of the parser that knows calls."""

    def call(self, node: ast.Call) -> tree.Node:
        """A call of any kind."""
        if not isinstance(node.func, ast.Name) or node.keywords or any(isinstance(a, ast.Starred) for a in node.args):
            raise self.refuse(node, f"`{self.text(node)}` is not part of the formula language")
        name = node.func.id
        if len(node.args) == 1 and isinstance(node.args[0], ast.GeneratorExp):
            return self.loop(node, name, node.args[0])
        if name == "allot":
            return self.allot(node)
        if name == "number":
            return self._number(node)
        if name in OWN_FUNCTIONS:
            return self._own(node, name)
        if name in self.scope.functions:
            arguments = self._as_taken(node, self.scope.functions[name].arguments)
            return tree.Apply(self.at(node), name, arguments)
        if name in self.scope.tables:
            self._count(node, len(self.scope.tables[name].axes))
            return tree.Lookup(self.at(node), name, tuple(self.read(each) for each in node.args))
        return self._unknown_function(node, name)

    def _unknown_function(self, node: ast.Call, name: str) -> tree.Node:
        known = [*OWN_FUNCTIONS, *self.scope.functions, *self.scope.tables, *OVER_SETS, *OVER_SPANS, "number"]
        hint = did_you_mean(name, known)
        if name in OVER_SETS:
            hint = f"write `{name}(rate[each] for each in a_set)`"
        elif name in self.scope.values or name in self.locals:
            hint = f"`{name}` is a value; a product is written `{name} * (...)`"
        elif name in OVER_SPANS:
            hint = f"write `{name}(f(t) for t in span(a, b))`"
        self.note(FormulaFault(f"unknown function `{name}`", hint, *self.at(node.func)))
        for each in node.args:
            self.read(each)
        return tree.Value(self.at(node), name, BARE)

    def _own(self, node: ast.Call, name: str) -> tree.Node:
        if name not in ("min", "max"):
            self._count(node, 1)
        elif len(node.args) < 2:
            raise self.refuse(node, f"`{name}` takes two values or more", f"or write `{name}(x[s] for s in a_set)`")
        return tree.Call(self.at(node), name, tuple(self.read(each) for each in node.args))

    def _count(self, node: ast.Call, wanted: int) -> None:
        if len(node.args) != wanted:
            values = "1 value" if wanted == 1 else f"{wanted} values"
            raise self.refuse(node, f"`{self.text(node.func)}` takes {values}, not {len(node.args)}")

    def _as_taken(self, node: ast.Call, arguments: tuple[Argument, ...]) -> tuple[tree.Node, ...]:
        """Arguments as a declared function takes them; one that takes bare numbers has the value taken in its unit."""
        self._count(node, len(arguments))
        given = [self.read(each) for each in node.args]
        return tuple(
            tree.InUnit(value.at, value, taken.number_of)
            if taken.number_of and getattr(value, "number_of", "") != taken.number_of
            else value
            for value, taken in zip(given, arguments, strict=True)
        )

    def _number(self, node: ast.Call) -> tree.Node:
        self._count(node, 2)
        unit = self.text(node.args[1]).strip()
        try:
            self.scope.book.size(unit)
        except UnitFault as fault:
            raise self.refuse(node.args[1], fault.fault, fault.hint) from None
        return tree.InUnit(self.at(node), self.read(node.args[0]), unit)
