"""Formulas of drills: checked against the day's numbers and what is drawn, and worked out as the phone does."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from generator.computing import Workbook
from generator.computing.flaws import Flaw, Flaws
from generator.formula import TRUTH, Kind, Measured, Node, names
from generator.model.leaves import Path
from generator.model.teaching import Drill


@dataclass(frozen=True)
class LinkedDrill:
    """Checked formulas of one drill by the ids of what they give."""

    works: Mapping[str, Node]
    whens: Mapping[str, Node]


def link_drills(workbook: Workbook) -> tuple[dict[str, LinkedDrill], Flaws]:
    """The formulas of all drills, and all that is wrong with them; what is wrong is left out."""
    flaws = Flaws()
    linked = {name: _Linking(workbook, name, flaws).link(drill) for name, drill in workbook.library.drills.items()}
    return linked, flaws


def needed(workbook: Workbook, linked: LinkedDrill, named: frozenset[str] = frozenset()) -> frozenset[str]:
    """All quantities that a drill's formulas, and what else is `named`, rest on."""
    trees = (*linked.works.values(), *linked.whens.values())
    used = {name for tree in trees for name in names(tree)} | named
    return frozenset().union(*(workbook.rests_on(name) for name in used if name in workbook.items))


def work_out(workbook: Workbook, linked: LinkedDrill, values: Mapping[str, float | str]) -> dict[str, float | str]:
    """The values with what the drill works out from them; what has no finite value is left out."""
    found = dict(values)
    for name, tree in linked.works.items():
        value = workbook.evaluate(tree, found) if all(each in found for each in names(tree)) else None
        if value is not None:
            found[name] = value
    return found


def right_answers(
    workbook: Workbook, drill: Drill, linked: LinkedDrill, values: Mapping[str, float | str]
) -> list[str]:
    """Ids of the answers that are right at these values, which `work_out` has completed; without a number none is."""
    known = {name: tree for name, tree in linked.whens.items() if all(each in values for each in names(tree))}
    holds = {name for name, tree in known.items() if workbook.evaluate(tree, values)}
    return [name for name, answer in drill.answers.items() if answer.right or name in holds]


class _Linking:
    def __init__(self, workbook: Workbook, name: str, flaws: Flaws) -> None:
        self._workbook = workbook
        self._name = name
        self._flaws = flaws
        self._scope = replace(workbook.scope, functions={}, tables={})
        """Without functions and tables, which the phone's file of drills does not carry."""

    def link(self, drill: Drill) -> LinkedDrill:
        self._flaws += self._unfit(drill)
        for name, draw in drill.draws.items():
            self._add(name, self._measured(draw.measure))
        works: dict[str, Node] = {}
        for name, worked in drill.works.items():
            kind = self._measured(worked.measure)
            tree = self._tree(("works", name, "formula"), worked.formula, kind)
            self._add(name, kind)
            if tree:
                works[name] = tree
        whens = {
            name: tree
            for name, answer in drill.answers.items()
            if answer.when and (tree := self._tree(("answers", name, "when"), answer.when, TRUTH))
        }
        return LinkedDrill(works, whens)

    def _add(self, name: str, kind: Measured) -> None:
        self._scope = replace(self._scope, values={**self._scope.values, name: kind})

    def _measured(self, name: str) -> Measured:
        measure = self._workbook.library.measures[name]
        return Measured(self._workbook.book.dimension(measure.unit), measure.point)

    def _tree(self, path: Path, text: str, wanted: Kind) -> Node | None:
        return self._flaws.link("drills", self._name, path, text, self._scope, wanted)

    def _unfit(self, drill: Drill) -> Iterator[Flaw]:
        for kind, given in (("draws", drill.draws), ("works", drill.works)):
            for name in given:
                if name in self._workbook.items:
                    fault = f"`{name}` is the id of a quantity and of a number of this drill"
                    yield Flaw("drills", self._name, (kind, name), fault, "rename it here")
        for name in drill.vary:
            if name not in self._workbook.givens.inputs:
                fault = f"`{name}` is not an input with a range"
                yield Flaw("drills", self._name, ("vary", name), fault, "draw something else")
