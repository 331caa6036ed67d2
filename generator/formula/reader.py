"""What all parts of the parser share: where things stand, what names mean, and the faults gathered so far."""

from __future__ import annotations

import ast
from abc import ABC, abstractmethod
from dataclasses import replace

from generator.formula import tree
from generator.formula.fault import FormulaFault
from generator.formula.kinds import BARE
from generator.formula.scope import Scope
from generator.problems import did_you_mean

OWN_FUNCTIONS = ("abs", "exp", "log", "sqrt", "ceil", "floor", "round", "min", "max")
"""Each takes one value; `min` and `max` take as many as are given, from two on."""


class Reader(ABC):
    """Reads one formula; `members` holds what each loop variable stands for just now."""

    def __init__(self, line: str, scope: Scope) -> None:
        self.line = line
        self.scope = scope
        self.members: dict[str, str] = {"member": scope.member} if scope.member else {}
        self.locals: dict[str, tree.Local] = {
            name: tree.Local((0, 0), name, argument.kind, argument.number_of)
            for name, argument in scope.arguments.items()
        }
        self.faults: list[FormulaFault] = []
        self.depth = 0
        self.size = 0

    @abstractmethod
    def read(self, node: ast.expr) -> tree.Node:
        """The tree below one node of Python's."""

    def at(self, node: ast.expr) -> tuple[int, int]:
        """Where a node stands in the text."""
        return node.col_offset + 1, (node.end_col_offset or node.col_offset) + 1

    def text(self, node: ast.expr) -> str:
        """A node as written."""
        start, end = self.at(node)
        return self.line[start - 1 : end - 1]

    def refuse(self, node: ast.expr, fault: str, hint: str = "") -> FormulaFault:
        """A fault at a node, to be raised."""
        return FormulaFault(fault, hint, *self.at(node))

    def note(self, fault: FormulaFault) -> None:
        """Keep a fault and go on; the same fault is kept once, however many members a loop has."""
        known = {(each.fault, each.column) for each in self.faults}
        if (fault.fault, fault.column) not in known:
            self.faults.append(fault)

    def named(self, name: str, at: tuple[int, int], written: str) -> tree.Node:
        """What a name stands for; an unknown one is noted."""
        if name in self.locals:
            return replace(self.locals[name], at=at)
        if name in self.scope.values:
            return tree.Value(at, name, self.scope.values[name])
        shown = f"`{name}`" if written == name else f"`{name}`, written `{written}`"
        hint = did_you_mean(name, [*self.scope.values, *self.locals])
        if name in self.members:
            hint = f"a member stands in brackets behind a name: `name[{name}]`"
        elif name in OWN_FUNCTIONS or name in self.scope.functions or name in self.scope.tables:
            hint = f"a function stands before brackets: `{name}(...)`"
        self.note(FormulaFault(f"unknown name {shown}", hint, *at))
        return tree.Value(at, name, BARE)
