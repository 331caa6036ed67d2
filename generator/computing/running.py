"""Formulas turned into Python once, and run for any settings."""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Mapping
from dataclasses import replace
from typing import Any

from generator.computing.day import NOT_FINITE_SENTENCE, Day, Refusal
from generator.computing.linking import Result
from generator.formula import Node, names, to_python
from generator.formula.code_printer import local
from generator.formula.python_code import NAMES
from generator.formula.runtime import Table
from generator.formula.scope import Function
from generator.units import UnitBook

Value = float | str
Compute = Callable[[Mapping[str, Value]], Any]


class Machine:
    """The formulas of one workbook, ready to run."""

    def __init__(
        self,
        book: UnitBook,
        functions: Mapping[str, tuple[Function, Node]],
        tables: Mapping[str, Table],
        results: Mapping[str, Result],
        watches: Mapping[str, Node],
    ) -> None:
        self._results = results
        self._watches = {name: names(tree) for name, tree in watches.items()}
        space: dict[str, Any] = {"__builtins__": {}, **NAMES, "tables": dict(tables), "functions": {}}
        for name, (function, tree) in functions.items():
            arguments = ", ".join(local(argument.name) for argument in function.arguments)
            space["functions"][name] = _compile(f"lambda {arguments}: {to_python(tree, book)}", space)
        self._formulas = {name: _of_values(result.formula, book, space) for name, result in results.items()}
        self._conditions = {
            name: tuple(_of_values(condition.that, book, space) for condition in result.conditions)
            for name, result in results.items()
        }
        self._alarms = {name: _of_values(tree, book, space) for name, tree in watches.items()}
        self._book, self._space = book, space

    def evaluate(self, tree: Node, values: Mapping[str, Value]) -> Value | None:
        """What one more formula gives at those values, or None where it has no finite value."""
        found: Value | None = _attempt(_of_values(tree, self._book, self._space), values)
        return found

    def run(self, settings: Mapping[str, Value], wanted: Collection[str] | None = None) -> Day:
        """Compute every result in order, or only those wanted. A refused result takes along those that use it."""
        values = dict(settings)
        refused: dict[str, Refusal] = {}
        for name, result in self._results.items():
            if wanted is not None and name not in wanted:
                continue
            refusal = self._inherited(result, refused) or self._unmet(name, result, values)
            value = None if refusal else _attempt(self._formulas[name], values)
            if value is None:
                refused[name] = refusal or Refusal(NOT_FINITE_SENTENCE)
            else:
                values[name] = value
        alerts = tuple(
            name
            for name, used in self._watches.items()
            if all(each in values for each in used) and _attempt(self._alarms[name], values)
        )
        return Day(values, refused, alerts)

    def _inherited(self, result: Result, refused: Mapping[str, Refusal]) -> Refusal | None:
        culprit = next((name for name in result.uses if name in refused), None)
        if culprit is None:
            return None
        return replace(refused[culprit], because=refused[culprit].because or culprit)

    def _unmet(self, name: str, result: Result, values: Mapping[str, Value]) -> Refusal | None:
        for condition, holds in zip(result.conditions, self._conditions[name], strict=True):
            met = _attempt(holds, values)
            if met is None:
                return Refusal(NOT_FINITE_SENTENCE)
            if not met:
                return Refusal(condition.sentence, condition.input, None, condition.key)
        return None


def _of_values(tree: Node, book: UnitBook, space: dict[str, Any]) -> Compute:
    return _compile(f"lambda v: {to_python(tree, book)}", space)


def _compile(code: str, space: dict[str, Any]) -> Callable[..., Any]:
    compiled: Callable[..., Any] = eval(code, space)  # the printer's own code, from a tree of allowed parts
    return compiled


def _attempt(compute: Compute, values: Mapping[str, Value]) -> Any:  # noqa: ANN401 - a number, a word or a truth
    """What it gives, or None where it has no finite value."""
    try:
        found = compute(values)
    except ArithmeticError:
        return None
    return found if isinstance(found, str) or math.isfinite(found) else None
