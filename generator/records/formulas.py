"""Formulas of tallies and lessons: checked against what readings give, and worked out for a day."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import NamedTuple

from generator.computing import Workbook
from generator.formula import FormulaFault, FormulaFaults, Measured, Node, Scope, check_gives, names, parse
from generator.model.leaves import Path
from generator.records.figures import figure_kinds


class Flaw(NamedTuple):
    """What is wrong in content, at a column from 1 of a text, or nought."""

    kind: str
    name: str
    path: Path
    column: int
    fault: str
    hint: str


@dataclass(frozen=True)
class RecordFormulas:
    """Checked formulas by id, and of lessons also those of what is `given`."""

    tallies: Mapping[str, Node]
    lessons: Mapping[str, Node]
    given: Mapping[str, Mapping[str, Node]]


def link_formulas(workbook: Workbook) -> tuple[RecordFormulas, list[Flaw]]:
    """Every formula about days, and all that is wrong with them; what is wrong is left out."""
    kinds = figure_kinds(workbook.library, workbook.book)
    scope = replace(workbook.scope, values={**kinds, **workbook.scope.values})
    flaws = [
        Flaw("readings", name, (), 0, f"`{both}` is the id of a quantity and of what was read", "rename one of the two")
        for name in workbook.library.readings
        for both in sorted(workbook.scope.values.keys() & kinds.keys())
        if both.rpartition("_")[0] == name
    ]
    flaws += _unfit_limits(workbook)
    linking = _Linking(scope, flaws)
    library = workbook.library
    tallies = {
        name: linking.link("tallies", name, ("formula",), tally.formula, _kind_of_measure(workbook, tally.measure))
        for name, tally in library.tallies.items()
    }
    lessons, given = {}, {}
    for name, lesson in library.lessons.items():
        flaws += _unfit_inputs(workbook, name)
        wanted = workbook.items[lesson.by or lesson.input].kind
        lessons[name] = linking.link("lessons", name, ("formula",), lesson.formula, wanted)
        trees = {
            key: linking.link("lessons", name, ("given", key), text, workbook.items[key].kind)
            for key, text in lesson.given.items()
            if key in workbook.items
        }
        given[name] = {key: tree for key, tree in trees.items() if tree}
    whole = RecordFormulas(_without_none(tallies), _without_none(lessons), given)
    return whole, flaws


def missing(tree: Node, values: Mapping[str, float | str]) -> list[str]:
    """What a formula needs and nobody wrote down."""
    return [name for name in names(tree) if name not in values]


def work_out(workbook: Workbook, tree: Node, values: Mapping[str, float | str]) -> float | None:
    """The value of a formula about a day, or None where something is missing or it has no finite value."""
    found = None if missing(tree, values) else workbook.evaluate(tree, values)
    return float(found) if isinstance(found, int | float) and math.isfinite(found) else None


class _Linking:
    def __init__(self, scope: Scope, flaws: list[Flaw]) -> None:
        self._scope = scope
        self._flaws = flaws

    def link(self, kind: str, name: str, path: Path, text: str, wanted: object) -> Node | None:
        """The tree of a formula that gives what is wanted, or a flaw."""
        try:
            tree = parse(text, self._scope)
            check_gives(tree, wanted, self._scope)  # type: ignore[arg-type]
        except (FormulaFault, FormulaFaults) as found:
            faults = found.faults if isinstance(found, FormulaFaults) else (found,)
            self._flaws += [Flaw(kind, name, path, each.column, each.fault, each.hint) for each in faults]
            return None
        return tree


def _kind_of_measure(workbook: Workbook, name: str) -> Measured:
    measure = workbook.library.measures[name]
    return Measured(workbook.book.dimension(measure.unit), measure.point)


def _unfit_limits(workbook: Workbook) -> Iterator[Flaw]:
    """Limits that do not measure what is read, and rhythms that are no time."""
    for name, item in workbook.library.readings.items():
        wanted = {"low": item.measure, "high": item.measure}
        for side, measure in wanted.items():
            limit = getattr(item, side)
            if limit and measure and workbook.items[limit].kind != _kind_of_measure(workbook, measure):
                yield Flaw("readings", name, (side,), 0, f"`{limit}` does not measure what is read", "name another")
        if item.at_most and workbook.library.readings[item.at_most].measure != item.measure:
            hint = "name one of the same measure"
            yield Flaw("readings", name, ("at_most",), 0, f"`{item.at_most}` does not count the same", hint)
        for key in ("within", "rhythm"):
            time = getattr(item, key)
            if time and workbook.items[time].measure.unit != "s":
                yield Flaw("readings", name, (key,), 0, f"`{time}` is not a time taken", "name another")


def _unfit_inputs(workbook: Workbook, name: str) -> Iterator[Flaw]:
    lesson = workbook.library.lessons[name]
    if lesson.input not in workbook.givens.inputs:
        yield Flaw("lessons", name, ("input",), 0, f"`{lesson.input}` is not an input", "only inputs are learned")
    for key in lesson.given:
        if key not in workbook.givens.inputs:
            yield Flaw("lessons", name, ("given", key), 0, f"`{key}` is not an input", "give inputs only")


def _without_none(trees: Mapping[str, Node | None]) -> dict[str, Node]:
    return {name: tree for name, tree in trees.items() if tree}
