"""A number spelled out is as typed as one in digits: no unit follows it into another system, nor it the plan."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.model.leaves import Leaf
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
_SOME_NUMBER = re.compile(rf"(?i)\b{_NUMBER}\b")
_SPELLED = rf"(?i)\b{_NUMBER}(?:[ -]{_NUMBER})*"
_WITH_UNIT = re.compile(rf"{_SPELLED}[ -](?:more )?(?:{'|'.join(_UNITS.split())})\b")
_ABOUT_ITSELF = ("plans",)
"""What is counted in these is their own: an id would stand there for the plan that is shown."""


def number_words_by_id(inspection: Inspection) -> Iterator[Finding]:
    """Text for people spells out no number of a unit, or of what a measure `counts` but for its phrases `in_words`."""
    measures = inspection.library.measures
    allowed = _allowed([phrase for measure in measures.values() for phrase in measure.in_words])
    leaves = [leaf for leaf in inspection.human if isinstance(leaf.role, Human) and not leaf.role.figures]
    counted = _counted([noun for measure in measures.values() for noun in measure.counts])
    for leaf in (leaf for leaf in leaves if _SOME_NUMBER.search(leaf.text)):
        yield from _spelled_out(leaf, leaf.text, _WITH_UNIT)
        if counted and leaf.kind not in _ABOUT_ITSELF:
            yield from _spelled_out(leaf, _without(allowed, leaf.text), counted)
    yield from _idle_phrases(inspection, "\n".join(leaf.text for leaf in leaves).casefold())


def _counted(nouns: list[str]) -> re.Pattern[str] | None:
    """A number in words and one of the nouns, with at most one word between."""
    either = "|".join(re.escape(noun) for noun in sorted(nouns, key=len, reverse=True))
    return re.compile(rf"{_SPELLED}(?:[ -][a-z]+)?[ -](?:{either})\b") if either else None


def _spelled_out(leaf: Leaf, text: str, pattern: re.Pattern[str]) -> Iterator[Finding]:
    for found in pattern.finditer(text):
        fault = f"the number “{found[0]}” is typed in words"
        hint = "make it a quantity with its source, and write `{id}` here"
        yield Finding(leaf.kind, leaf.name, leaf.path, fault, hint, column=found.start() + 1)


def _allowed(phrases: list[str]) -> re.Pattern[str] | None:
    either = "|".join(re.escape(phrase) for phrase in sorted(phrases, key=len, reverse=True))
    return re.compile(rf"(?i)\b(?:{either})\b") if either else None


def _without(allowed: re.Pattern[str] | None, text: str) -> str:
    return allowed.sub(lambda found: "·" * len(found[0]), text) if allowed else text


def _idle_phrases(inspection: Inspection, texts: str) -> Iterator[Finding]:
    for name, measure in inspection.library.measures.items():
        for number, phrase in enumerate(measure.in_words):
            if phrase.casefold() not in texts:
                fault = f"“{phrase}” stands in no text"
                yield Finding("measures", name, ("in_words", number), fault, "take the phrase out")
