"""Formulas that rest on the day's numbers and stand elsewhere: checked, with what is wrong gathered."""

from __future__ import annotations

from typing import NamedTuple

from generator.formula import FormulaFault, FormulaFaults, Kind, Node, Scope, check_gives, parse
from generator.model.leaves import Path


class Flaw(NamedTuple):
    """What is wrong in content, at a column from 1 of a text, or nought."""

    kind: str
    name: str
    path: Path
    fault: str
    hint: str
    column: int = 0


class Flaws(list[Flaw]):
    """All that is wrong, in the order in which it was met."""

    def link(self, kind: str, name: str, path: Path, text: str, scope: Scope, wanted: Kind) -> Node | None:
        """The tree of a formula that gives what is wanted, or None and a flaw for each fault."""
        try:
            tree = parse(text, scope)
            check_gives(tree, wanted, scope)
        except (FormulaFault, FormulaFaults) as found:
            self += [Flaw(kind, name, path, each.fault, each.hint, each.column) for each in found.faults]
            return None
        return tree
