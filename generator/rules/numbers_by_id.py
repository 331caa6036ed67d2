"""A number typed into a sentence is wrong as soon as the plan, the rules or the units change."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.model.leaves import Leaf
from generator.model.roles import Human
from generator.rules.inspection import Finding, Inspection

_NAMES = (
    "second minute hour day week degree pound ounce gallon quart pint cup inch foot yard mile gram kilogram "
    "litre liter millilitre milliliter metre meter centimetre centimeter millimetre millimeter volt amp watt "
    "feet inche percent ppm hr min sec lb"
)
"""Units as sentences spell them; each may end in s."""
_ALSO_A_WORD = ("in",)
"""Unit symbols that are common words: a row of `3 in the tub` is no length."""
_DIGIT = re.compile(r"\d")
_BRACES = re.compile(r"\{[^{}]*\}")


def numbers_by_id(inspection: Inspection) -> Iterator[Finding]:
    """Text for people holds no typed number with a unit: the number is a quantity, and stands there as `{id}`."""
    pattern = _pattern(inspection)
    for leaf in inspection.human:
        of_people = isinstance(leaf.role, Human) and not leaf.role.figures and leaf.kind not in ("units", "measures")
        if of_people and _DIGIT.search(leaf.text):
            yield from _typed(leaf, pattern)


def _typed(leaf: Leaf, pattern: re.Pattern[str]) -> Iterator[Finding]:
    text = _BRACES.sub(lambda braces: "·" * len(braces[0]), leaf.text)
    for found in pattern.finditer(text):
        hint = "make it a quantity with its source, and write `{id}` here"
        fault = f"the number “{found[0]}” is typed"
        yield Finding(leaf.kind, leaf.name, leaf.path, fault, hint, column=found.start() + 1)


def _pattern(inspection: Inspection) -> re.Pattern[str]:
    units = {part for text, unit in inspection.library.units.items() for part in (text, unit.symbol, unit.plural)}
    written = {part for part in units if part and not part[0].isdigit()} - set(_ALSO_A_WORD)
    words = [name + end for name in _NAMES.split() for end in ("", "s")]
    either = "|".join(re.escape(part) for part in sorted({*written, *words}, key=len, reverse=True))
    return re.compile(rf"(?<![\w.])\d[\d.,/]*(?:\s*(?:to|-|–)\s*\d[\d.,]*)?[\s-]*(?:{either})(?!\w)")
