"""A number spelled out is as typed as one in digits, and no unit follows it into another system."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.model.roles import Human
from generator.rules.inspection import Finding, Inspection

_NUMBERS = (
    "two three four five six seven eight nine ten eleven twelve fifteen twenty thirty forty fifty sixty eighty ninety "
    "hundred thousand dozen"
)
_UNITS = (
    "seconds minutes hours days weeks months years degrees percent pounds ounces gallons quarts inches miles "
    "grams kilograms litres liters metres meters centimetres centimeters millimetres millimeters"
)
"""Units that sentences spell out. `feet` is left out: the word names a part of the body too."""
_NUMBER = f"(?:{'|'.join(_NUMBERS.split())})"
_TYPED = re.compile(rf"(?i)\b{_NUMBER}(?:[ -]{_NUMBER})*[ -](?:more )?(?:{'|'.join(_UNITS.split())})\b")


def number_words_by_id(inspection: Inspection) -> Iterator[Finding]:
    """Text for people holds no spelled-out number with a unit: the number is a quantity, and stands there as `{id}`."""
    for leaf in inspection.human:
        if isinstance(leaf.role, Human) and not leaf.role.figures:
            for found in _TYPED.finditer(leaf.text):
                fault = f"the number “{found[0]}” is typed in words"
                hint = "make it a quantity with its source, and write `{id}` here"
                yield Finding(leaf.kind, leaf.name, leaf.path, fault, hint, column=found.start() + 1)
