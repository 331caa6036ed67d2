"""How loops are read: over the members of a set, written out one by one, and over a span."""

from __future__ import annotations

import ast
import re
from collections.abc import Callable
from typing import Literal, TypeVar

from generator.formula import tree
from generator.formula.checking import check
from generator.formula.kinds import Measured
from generator.formula.reader import Reader
from generator.problems import did_you_mean

OVER_SETS = ("sum", "min", "max", "any", "all", "argmin", "argmax")
OVER_SPANS = ("integral", "root")
Read = TypeVar("Read")


class LoopReader(Reader):
    """The part of the parser that knows loops."""

    def loop(self, node: ast.Call, name: str, loop: ast.GeneratorExp) -> tree.Node:
        """`sum(x[s] for s in a_set)` and its like, and `integral(f(t) for t in span(a, b))`."""
        if name in OVER_SPANS:
            return self._over_span(node, "integral" if name == "integral" else "root", loop)
        if name not in OVER_SETS:
            raise self.refuse(node.func, f"`{name}` does not go through a set", f"{', '.join(OVER_SETS)} do")
        members, terms = self._through_set(loop, lambda: self.read(loop.elt))
        at = self.at(node)
        if name in ("argmin", "argmax"):
            return tree.Pick(at, "argmin" if name == "argmin" else "argmax", members, tuple(terms))
        if name in ("any", "all"):
            return tree.Logic(at, "or" if name == "any" else "and", tuple(terms))
        if name in ("min", "max"):
            return tree.Call(at, name, tuple(terms)) if len(terms) > 1 else terms[0]
        total = terms[0]
        for term in terms[1:]:
            total = tree.Arithmetic(at, "+", total, term)
        return total

    def _through_set(self, loop: ast.GeneratorExp, read: Callable[[], Read]) -> tuple[tuple[str, ...], list[Read]]:
        """What `read` gives for each member of the set in turn."""
        variable, over = self._head(loop)
        if not isinstance(over, ast.Name) or over.id not in self.scope.sets:
            fault = f"unknown set `{self.text(over)}`"
            raise self.refuse(over, fault, did_you_mean(self.text(over), self.scope.sets))
        if not self.scope.sets[over.id]:
            raise self.refuse(over, f"the set `{over.id}` has no members")
        return self._through(variable, over.id, read)

    def _through(self, variable: str, name: str, read: Callable[[], Read]) -> tuple[tuple[str, ...], list[Read]]:
        members, found = self.scope.sets[name], []
        for member in members:
            self.members[variable] = member
            found.append(read())
        del self.members[variable]
        return members, found

    def _over_span(self, node: ast.Call, name: Literal["integral", "root"], loop: ast.GeneratorExp) -> tree.Node:
        variable, span = self._head(loop)
        is_span = isinstance(span, ast.Call) and isinstance(span.func, ast.Name) and span.func.id == "span"
        if not isinstance(span, ast.Call) or not is_span or len(span.args) != 2 or span.keywords:
            raise self.refuse(span, f"`{name}` goes over a span", f"write `{name}(f(t) for t in span(a, b))`")
        low, high = self.read(span.args[0]), self.read(span.args[1])
        kind = check(low, self.scope)
        if not isinstance(kind, Measured):
            raise self.refuse(span, "a span goes from one number to another")
        self.locals[variable] = tree.Local((0, 0), variable, kind)
        body = self.read(loop.elt)
        del self.locals[variable]
        return tree.Over(self.at(node), name, variable, body, low, high)

    def allot(self, node: ast.Call) -> tree.Node:
        """`allot(total, work[s], cap[s] for s in a_set)`; open_text() has blanked the loop, foreign to Python."""
        form = "`allot(total, work[s], cap[s] for s in a_set)`"
        loop = re.search(r"\bfor\s+(\w+)\s+in\s+(\w+)\s*\)$", self.text(node))
        if len(node.args) != 3 or not loop:
            raise self.refuse(node, "`allot` stands alone and takes three values and a set", f"write {form}")
        if not self.scope.member or self.scope.member not in self.scope.sets.get(loop[2], ()):
            hint = f"give the quantity `each: {loop[2]}`"
            raise self.refuse(node, "`allot` needs a quantity with one value for each member", hint)
        members, pairs = self._through(loop[1], loop[2], lambda: (self.read(node.args[1]), self.read(node.args[2])))
        works, caps = zip(*pairs, strict=True)
        total = self.read(node.args[0])
        return tree.Allot(self.at(node), total, works, caps, members, self.scope.member)

    def _head(self, loop: ast.GeneratorExp) -> tuple[str, ast.expr]:
        """The variable of a loop and what it goes through."""
        head = loop.generators[0]
        if len(loop.generators) > 1 or head.ifs or head.is_async or not isinstance(head.target, ast.Name):
            raise self.refuse(
                loop, "a loop has one `for` and no `if`", "choose inside: `sum(a if test else b for ...)`"
            )
        name = head.target.id
        if name in self.scope.values or name in self.locals or name in self.members:
            raise self.refuse(head.target, f"`{name}` already means something else", "give the loop a name of its own")
        return name, head.iter
