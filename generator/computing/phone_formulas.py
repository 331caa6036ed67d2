"""The file `phone/formulas.js`: data and formulas, the same for every language."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import TYPE_CHECKING

from generator.formula import Node, to_javascript
from generator.formula.code_printer import local

if TYPE_CHECKING:
    from generator.computing.workbook import Workbook

MADE = "// Made from content by the build; do not edit.\n"
RUNTIME = """\
import { allot, argmax, argmin } from "./choosing.js";
import { abs, ceil, exp, floor, integral, log, lookup, max, min, over, power, root, round, sqrt } from "./runtime.js";
"""
"""What printed formulas call."""
_HEAD = f"""\
{MADE}{RUNTIME}\
import {{ usesOf, watching }} from "./naming.js";
import {{ computeAhead, computeOn }} from "./running.js";
import {{ settleOn }} from "./settling.js";
"""
_TAIL = """\
export { functions, steps, tables };
export const uses = usesOf(steps);
const watches = watching(conditions);
export const settle = (changes = {}, base = plan) => settleOn({ inputs, constants, choices }, base, changes);
export const compute = (settings, before) => computeOn({ steps, uses, watches }, settings, before);
export const computeInPieces = (settings) => computeAhead({ steps, uses, watches }, settings);
"""


def print_phone_formulas(workbook: Workbook) -> str:
    """The whole file; its bytes are the same for the same content."""
    data = {
        "inputs": _inputs(workbook),
        "choices": {
            name: {"default": default, "options": workbook.givens.options[name]}
            for name, default in workbook.givens.choices.items()
        },
        "constants": workbook.givens.constants,
        "measures": _measures(workbook),
        "units": _units(workbook),
        "measureOf": {name: item.quantity.measure for name, item in workbook.items.items()},
        "digitsOf": {
            name: item.quantity.digits for name, item in workbook.items.items() if item.quantity.digits is not None
        },
        "doubts": {name: [doubt.reach, doubt.relative] for name, doubt in workbook.givens.doubts.items()},
        "plan": workbook.plan,
    }
    lines = [f"export const {name} = {_json(value)};\n" for name, value in data.items()]
    return "".join([_HEAD, *lines, f"const tables = {_json(workbook.tables)};\n", *_code(workbook), _TAIL])


def _code(workbook: Workbook) -> list[str]:
    def of_values(tree: Node) -> str:
        return f"(v) => {to_javascript(tree, workbook.book)}"

    functions = {}
    for name, tree in workbook.functions.items():
        arguments = ", ".join(local(argument.name) for argument in workbook.scope.functions[name].arguments)
        functions[name] = f"({arguments}) => {to_javascript(tree, workbook.book)}"
    steps = {}
    for name, result in workbook.results.items():
        conditions = [f"{{that: {of_values(each.that)}, input: {_json(each.input)}}}" for each in result.conditions]
        require = f", require: [{', '.join(conditions)}]" if conditions else ""
        steps[name] = f"{{formula: {of_values(result.formula)}{require}}}"
    watches = {name: of_values(tree) for name, tree in workbook.watches.items()}
    return [_object("functions", functions), _object("steps", steps), _object("conditions", watches)]


def _object(name: str, entries: Mapping[str, str]) -> str:
    inside = "".join(f"  {key}: {code},\n" for key, code in entries.items())
    return f"const {name} = {{\n{inside}}};\n"


def _inputs(workbook: Workbook) -> dict[str, object]:
    return {
        name: {
            "low": entry.low,
            "high": entry.high,
            "step": entry.step,
            "whole": entry.whole,
            "default": entry.default,
            "measure": workbook.items[name].quantity.measure,
            "group": workbook.items[name].quantity.group,
        }
        for name, entry in workbook.givens.inputs.items()
    }


def _measures(workbook: Workbook) -> dict[str, object]:
    used = {item.quantity.measure for item in workbook.items.values()}
    return {
        name: measure.model_dump(include={"unit", "point", "form", "us", "metric"})
        for name, measure in workbook.library.measures.items()
        if name in used
    }


def _units(workbook: Workbook) -> dict[str, object]:
    """All units, as a phone shows them and reads what is typed."""
    units: dict[str, object] = {}
    for text, unit in workbook.library.units.items():
        size = workbook.book.size(text)
        about = {"symbol": unit.symbol, "plural": unit.plural, "pattern": unit.pattern, "also": unit.also}
        units[text] = {**about, "factor": float(size.factor), "offset": float(size.offset)}
    return units


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
