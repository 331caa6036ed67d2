"""Reads MathML as a person does: signs in the order they stand, no grouping but what brackets and bars show."""

from __future__ import annotations

import ast
import math
import re
from typing import Any
from xml.etree import ElementTree as Tree

from generator.formula.runtime import ceil, floor, log, nearest, power, sqrt

_SIGNS = {"−": "-", "×": "*", "≤": "<=", "≥": ">=", "≠": "!=", "=": "==", ";": ","}
_WORDS = {
    "smallest of": "min", "largest of": "max", "rounded up": "ceil", "rounded down": "floor", "rounded": "nearest",
    "ln": "log", "is": "==", "is not": "!=", "and": " and ", "or": " or ", "not": " not ", "otherwise": "",
}  # fmt: skip
_SPACE = {
    "min": min,
    "max": max,
    "ceil": ceil,
    "floor": floor,
    "nearest": nearest,
    "log": log,
    "sqrt": sqrt,
    "abs": abs,
}


def read_numbers(markup: str) -> tuple[Any, str]:
    """What the formula in a working with numbers comes to, and the result that its last row shows."""
    rows = list(Tree.fromstring(markup)[0])
    said = "".join(_read(cell) for row in rows[:-1] for cell in row)
    result = "".join(_read(rows[-1][1]))
    whole = ast.fix_missing_locations(_Powers().visit(ast.parse(said.removeprefix("=="), mode="eval")))
    return eval(compile(whole, "a working", "eval"), {**_SPACE, "e": math.e, "power": power}), result


class _Powers(ast.NodeTransformer):
    """Python's own powers of negative numbers are complex; a person knows none."""

    def visit_BinOp(self, node: ast.BinOp) -> ast.expr:
        self.generic_visit(node)
        if not isinstance(node.op, ast.Pow):
            return node
        return ast.Call(ast.Name("power", ast.Load()), [node.left, node.right], [])


def _read(node: Tree.Element) -> str:
    parts = list(node)
    if node.tag in ("mrow", "mtd", "mtr"):
        return _read_row(parts)
    if node.tag == "mfrac":
        return f"(({_read(parts[0])})/({_read(parts[1])}))"
    if node.tag == "msup":
        return f"{_read(parts[0])}**({_read(parts[1])})"
    if node.tag == "msqrt":
        return f"sqrt({''.join(map(_read, parts))})"
    if node.tag == "mroot":
        return f"(({_read(parts[0])})**(1/{_read(parts[1])}))"
    if node.tag == "mtable":
        return _read_cases(parts) if node.get("class") == "cases" else "".join(map(_read, parts))
    if node.tag == "mspace":
        return ""
    return _read_leaf(node.tag, node.text or "")


def _read_row(parts: list[Tree.Element]) -> str:
    texts = [part.text for part in parts]
    if len(parts) > 2 and texts[0] == texts[-1] == "|" and parts[0].tag == "mo":
        return f"abs({''.join(map(_read, parts[1:-1]))})"
    return "".join(map(_read, parts))


def _read_cases(rows: list[Tree.Element]) -> str:
    said = ""
    for row in rows[:-1]:
        said += f"({_read(row[0])}) if ({_read(row[1]).removeprefix('if')}) else "
    return said + f"({_read(rows[-1][0])})"


def _read_leaf(tag: str, text: str) -> str:
    if tag == "mo":
        return "" if text == "{" else _SIGNS.get(text, text)
    if tag == "mtext":
        word = text.strip("\u00a0")
        if word == "if":
            return "if"
        return _WORDS.get(word, "")  # the rest are units, and all units here are coherent
    if tag == "mi" and text != "e":
        return repr(text)
    return re.sub(r"\s", "", text)
