"""The first door of a formula: its text is looked over, then read as a Python expression."""

from __future__ import annotations

import ast
import re

from generator.formula.fault import FormulaFault, on_one_line

LONGEST = 2000
_DEEPEST_BRACKETS = 30
_ALLOWED = re.compile(r"[A-Za-z0-9_ .,+\-*/()<>=!\[\]^%:&|~]")
_INSTEAD = {
    "×": "write `*`", "·": "write `*`", "÷": "write `/`", "−": "write `-`", "–": "write `-`", "≤": "write `<=`",
    "≥": "write `>=`", "≠": "write `!=`", "²": "write `** 2`", "³": "write `** 3`", "√": "write `sqrt(x)`",
    "°": "write the unit after the number: `60[degC]`", "{": "use round brackets", "}": "use round brackets",
    '"': "names stand without quotes", "'": "names stand without quotes", "’": "names stand without quotes",
}  # fmt: skip
_NUMBER_WITH_UNIT = re.compile(r"(?<![A-Za-z_\d.])(\d[\d.]*(?:[eE][+-]?\d+)?)(\s*\[)([^\[\]]*)(\])")
_ALLOT_LOOP = re.compile(r"^(allot\s*\(.*)(\sfor\s+\w+\s+in\s+\w+\s*)\)$")


def open_text(text: str) -> tuple[ast.expr, str]:
    """The expression in Python's own tree, and the text on one line. Raises FormulaFault."""
    if len(text) > LONGEST:
        raise FormulaFault(f"the formula is longer than {LONGEST} characters", "divide it into quantities of their own")
    line = on_one_line(text)
    if not line:
        raise FormulaFault("the formula is empty")
    _check_characters(line)
    _check_brackets(line)
    readable = _ALLOT_LOOP.sub(
        lambda found: found[1] + " " * len(found[2]) + ")", _NUMBER_WITH_UNIT.sub(_hide_unit, line)
    )
    try:
        return ast.parse(readable, mode="eval").body, line
    except SyntaxError as error:
        column = min(error.offset or len(line), len(line))  # no offset: it ends too early
        raise FormulaFault("the formula cannot be read from here on", _guess(line), column, column + 1) from None
    except (ValueError, MemoryError, RecursionError):
        raise FormulaFault("the formula is nested too deeply", "divide it into quantities of their own") from None


def _hide_unit(found: re.Match[str]) -> str:
    """A name of the same length in place of the unit, because a unit text need not be Python."""
    if not found[3].strip():
        column = found.start(3)
        raise FormulaFault("there is no unit between the brackets", "write for example `12[kg]`", column, column + 2)
    return found[1] + found[2] + "_" * len(found[3]) + found[4]


def _check_characters(line: str) -> None:
    for column, character in enumerate(line, start=1):
        if not _ALLOWED.match(character):
            shown = f"`{character}`" if character.isprintable() else f"U+{ord(character):04X}"
            raise FormulaFault(f"{shown} has no place in a formula", _INSTEAD.get(character, ""), column, column + 1)


def _check_brackets(line: str) -> None:
    pairs, waiting = {")": "(", "]": "["}, list[int]()
    for column, character in enumerate(line):
        if character in "([":
            waiting.append(column)
        elif character in pairs and (not waiting or line[waiting.pop()] != pairs[character]):
            raise FormulaFault(f"`{character}` closes nothing", "", column + 1, column + 2)
        if len(waiting) > _DEEPEST_BRACKETS:
            hint = "divide it into quantities of their own"
            raise FormulaFault("the formula is nested too deeply", hint, column + 1, column + 2)
    if waiting:
        column = waiting[-1] + 1
        raise FormulaFault(f"`{line[column - 1]}` is never closed", "", column, column + 1)


def _guess(line: str) -> str:
    if re.search(r"\ballot\s*\(", line):
        return "`allot(...)` is the whole formula of a quantity, never a part"
    if re.search(r"(?<![<>=!])=(?!=)", line):
        return "two values are compared with `==`"
    if re.search(r"\bif\b", line) and not re.search(r"\belse\b", line):
        return "give the other case too: `a if test else b`"
    if re.search(r"&&|\|\||!(?!=)", line):
        return "write `and`, `or` and `not`"
    return ""
