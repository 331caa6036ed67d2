"""Formulas bound to what they name and checked: of functions, of results with their requirements, and of watches."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property

from generator.computing.findings import Findings
from generator.computing.items import Item
from generator.computing.ordering import put_in_order
from generator.formula import (
    TRUTH,
    FormulaFault,
    FormulaFaults,
    Kind,
    Node,
    Scope,
    Word,
    calls,
    check,
    check_gives,
    names,
    parse,
)
from generator.model.leaves import Path
from generator.model.library import Library


@dataclass(frozen=True)
class Condition:
    """A requirement: what must hold, the sentence otherwise, the input to look at, and the key of the sentence."""

    that: Node
    sentence: str
    input: str | None
    key: str


@dataclass(frozen=True)
class Result:
    """A quantity with its formula."""

    formula: Node
    conditions: tuple[Condition, ...]

    @cached_property
    def uses(self) -> tuple[str, ...]:
        """The quantities and choices it needs, in the order in which they are looked at."""
        found = [*names(self.formula), *(name for condition in self.conditions for name in names(condition.that))]
        return tuple(dict.fromkeys(found))


class Linking:
    """Reads and checks formulas of one library."""

    def __init__(self, library: Library, scope: Scope, findings: Findings) -> None:
        self.library = library
        self.scope = scope
        self.findings = findings

    def functions(self) -> dict[str, Node]:
        """The formulas of declared functions, each after those it calls."""
        trees = {}
        for name, entry in self.library.functions.items():
            function = self.scope.functions[name]
            arguments = {argument.name: argument for argument in function.arguments}
            inside = replace(self.scope, values={}, arguments=arguments)
            tree = self._link("functions", name, ("formula",), entry.formula, inside, function.kind)
            if tree:
                trees[name] = tree
        order, rings = put_in_order({name: calls(tree) for name, tree in trees.items()})
        self._note_rings("functions", rings, lambda name: name)
        return {name: trees[name] for name in order if name in trees}

    def results(self, items: dict[str, Item]) -> dict[str, Result]:
        """Every quantity that has a formula, each after those it uses."""
        results = {}
        for item in items.values():
            if item.quantity.formula is None:
                continue
            scope = replace(self.scope, member=item.member)
            path: Path = ("formula",)
            tree = self._link("quantities", item.name, path, item.quantity.formula, scope, item.kind)
            conditions = self._conditions(item, scope)
            if tree:
                results[item.id] = Result(tree, conditions)
        order, rings = put_in_order({name: result.uses for name, result in results.items()})
        self._note_rings("quantities", rings, lambda name: items[name].name)
        return {name: results[name] for name in order if name in results}

    def watches(self) -> dict[str, Node]:
        """The conditions of all watches."""
        linked = {
            name: self._link("watches", name, ("when",), watch.when, self.scope, TRUTH)
            for name, watch in self.library.watches.items()
        }
        return {name: tree for name, tree in linked.items() if tree}

    def _conditions(self, item: Item, scope: Scope) -> tuple[Condition, ...]:
        found = []
        for number, entry in enumerate(item.quantity.require):
            tree = self._link("quantities", item.name, ("require", number, "that"), entry.that, scope, TRUTH)
            if tree:
                found.append(Condition(tree, entry.otherwise, entry.input, f"{item.id}:{number}"))
        return tuple(found)

    def _link(self, kind: str, name: str, path: Path, text: str, scope: Scope, wanted: Kind) -> Node | None:
        try:
            tree = parse(text, scope)
            if isinstance(wanted, Word) and isinstance(check(tree, scope), Word):
                return tree
            check_gives(tree, wanted, scope)
        except (FormulaFault, FormulaFaults) as found:
            self.findings.add_formula(kind, name, path, text, found)
            return None
        return tree

    def _note_rings(self, kind: str, rings: list[tuple[str, ...]], entry: Callable[[str], str]) -> None:
        for ring in rings:
            way = " → ".join(f"`{name}`" for name in (*ring, ring[0]))
            hint = "take one of them out of the formula that uses it"
            self.findings.add(kind, entry(ring[0]), ("formula",), f"`{ring[0]}` needs itself: {way}", hint)
