"""Formulas of tallies and lessons: checked against what readings give, and worked out for a day."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from generator.computing import Workbook
from generator.computing.flaws import Flaw, Flaws
from generator.formula import Measured, Node, names
from generator.records.figures import figure_kinds


@dataclass(frozen=True)
class RecordFormulas:
    """Checked formulas by id, and of lessons also those of what is `given`."""

    tallies: Mapping[str, Node]
    lessons: Mapping[str, Node]
    given: Mapping[str, Mapping[str, Node]]


def link_formulas(workbook: Workbook) -> tuple[RecordFormulas, Flaws]:
    """Every formula about days, and all that is wrong with them; what is wrong is left out."""
    kinds = figure_kinds(workbook.library, workbook.book)
    scope = replace(workbook.scope, values={**kinds, **workbook.scope.values})
    flaws = Flaws(
        Flaw("readings", name, (), f"`{both}` is the id of a quantity and of what was read", "rename one of the two")
        for name in workbook.library.readings
        for both in sorted(workbook.scope.values.keys() & kinds.keys())
        if both.rpartition("_")[0] == name
    )
    flaws += _unfit_limits(workbook)
    library = workbook.library
    tallies = {
        name: flaws.link("tallies", name, ("formula",), tally.formula, scope, _kind_of_measure(workbook, tally.measure))
        for name, tally in library.tallies.items()
    }
    lessons, given = {}, {}
    for name, lesson in library.lessons.items():
        flaws += _unfit_inputs(workbook, name)
        wanted = workbook.items[lesson.by or lesson.input].kind
        lessons[name] = flaws.link("lessons", name, ("formula",), lesson.formula, scope, wanted)
        trees = {
            key: flaws.link("lessons", name, ("given", key), text, scope, workbook.items[key].kind)
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
                yield Flaw("readings", name, (side,), f"`{limit}` does not measure what is read", "name another")
        if item.at_most and workbook.library.readings[item.at_most].measure != item.measure:
            hint = "name one of the same measure"
            yield Flaw("readings", name, ("at_most",), f"`{item.at_most}` does not count the same", hint)
        for key in ("within", "rhythm"):
            time = getattr(item, key)
            if time and workbook.items[time].measure.unit != "s":
                yield Flaw("readings", name, (key,), f"`{time}` is not a time taken", "name another")


def _unfit_inputs(workbook: Workbook, name: str) -> Iterator[Flaw]:
    lesson = workbook.library.lessons[name]
    if lesson.input not in workbook.givens.inputs:
        yield Flaw("lessons", name, ("input",), f"`{lesson.input}` is not an input", "only inputs are learned")
    for key in lesson.given:
        if key not in workbook.givens.inputs:
            yield Flaw("lessons", name, ("given", key), f"`{key}` is not an input", "give inputs only")


def _without_none(trees: Mapping[str, Node | None]) -> dict[str, Node]:
    return {name: tree for name, tree in trees.items() if tree}
