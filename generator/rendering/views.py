"""Small questions that templates ask about entries."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterable
from typing import Any

from markupsafe import Markup

from generator.computing.items import Item
from generator.formula import Working
from generator.model.procedure import Procedure, Step
from generator.telling import addresses
from generator.telling.certainty import Certainty, tell_certainty
from generator.telling.edition import Edition
from generator.telling.figures import Figures
from generator.telling.sentences import Sentences
from generator.units import plainly
from generator.units.writing import MINUS

_MARKDOWN = re.compile(r"([\\`*_{}\[\]()#+\-.!|~^])")

_NUMBER = re.compile(r"(?<!\w)\+?(?:\(\d+\)|\d)(?:[\s.-]{0,2}(?:\(\d+\)|\d)){2,18}")


class Views:
    """Answers for one edition; every public method is a filter of the same name."""

    def __init__(self, edition: Edition, figures: Figures, sentences: Sentences) -> None:
        self._edition = edition
        self._figures = figures
        self._sentences = sentences

    def filters(self) -> dict[str, Callable[..., Any]]:
        """The public methods by name."""
        names = [name for name in dir(self) if not name.startswith("_") and name != "filters"]
        return {name: getattr(self, name) for name in names} | {"json": _json}

    def heading(self, title: str) -> Markup:
        """A title as it stands in a Markdown heading, with nothing in it taken for Markdown."""
        text = title.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
        return Markup(_MARKDOWN.sub(r"\\\1", text))

    def title_of(self, identifier: str) -> str:
        """The title of a quantity or choice by id."""
        return self._figures.title_of(identifier)

    def kind_of(self, identifier: str) -> str:
        """Who sets a quantity: `input` a person, `constant` the content, `result` a formula."""
        workbook = self._edition.workbook
        return (
            "result"
            if identifier in workbook.results
            else "input"
            if identifier in workbook.givens.inputs
            else "constant"
        )

    def keyboard(self, item: Item) -> str:
        """Which keyboard is asked for to type a value: on iPhones the one of digits has no minus sign."""
        lowest = item.quantity.range and self._figures.read(item.quantity.range[0], item)
        below = lowest is not None and MINUS in self._figures.write(lowest, item)
        return "text" if below or item.measure.form in ("clock", "duration") else "decimal"

    def home(self, identifier: str) -> str:
        """Where a quantity or choice is shown in full."""
        if identifier in self._edition.library.choices:
            return f"{addresses.PLAN}#{identifier}"
        return f"{addresses.group(self._figures.items[identifier].quantity.group)}#{identifier}"

    def applies(self, step: Step) -> bool:
        """Whether the plan has one of the options that the step is only for."""
        return self._edition.applies(step)

    def always(self, procedure: Procedure) -> int:
        """How many steps are there whatever the plan."""
        return sum(not step.only for step in procedure.steps.values())

    def sometimes(self, procedure: Procedure) -> dict[str, dict[str, tuple[str, ...]]]:
        """Ids of the other steps, each with the options it is only for."""
        return {name: dict(step.only) for name, step in procedure.steps.items() if step.only}

    def cited(self, procedure: Procedure) -> list[tuple[str, list[tuple[str, Markup]]]]:
        """What a procedure rests on: the sources it cites, each with places in it and what is said there."""
        said = [
            *((step.action, step.source) for step in procedure.steps.values()),
            *((caution.hazard, caution.source) for caution in procedure.cautions.values()),
            *((rule.when, rule.source) for rule in procedure.stops.values()),
            *((fault.sign, fault.source) for fault in procedure.faults.values()),
        ]
        found: dict[str, list[tuple[str, Markup]]] = {}
        for text, citations in said:
            for each in citations:
                if each.id:
                    found.setdefault(each.id, []).append((each.place, self._sentences.html(text)))
        return list(found.items())

    def sentences(self, procedure: Procedure) -> list[str]:
        """What stands in the rows of a procedure, which are tapped and so hold no links."""
        keys = [key for step in procedure.steps.values() for key in step.key_points]
        actions = [step.action for step in procedure.steps.values()]
        return [*actions, *(text for key in keys for text in (key.point, key.why) if text)]

    def refusals(self, identifier: str) -> list[tuple[str, str]]:
        """Sentences that may have to be shown at an input, each after the keys by which programs know it."""
        found: dict[str, list[str]] = {}
        for result in self._edition.workbook.results.values():
            for condition in result.conditions:
                if condition.input == identifier:
                    found.setdefault(condition.sentence, []).append(condition.key)
        return [(" ".join(keys), sentence) for sentence, keys in found.items()]

    def refused(self, sentence: str) -> bool:
        """Whether the plan makes a quantity refuse with this sentence."""
        return any(refusal.sentence == sentence for refusal in self._edition.day.refused.values())

    def certainty(self, identifier: str) -> Certainty | None:
        """How sure a number is, where content asks for it."""
        return tell_certainty(self._edition, self._figures, identifier)

    def working(self, identifier: str) -> Working:
        """A formula in words and with numbers, as MathML."""
        return self._edition.workbook.working(identifier, self._edition.day, self._edition.translate)

    def function_in_words(self, identifier: str) -> str:
        """A declared function, as MathML."""
        return self._edition.workbook.function_in_words(identifier, self._edition.translate)

    def figure(self, number: float) -> str:
        """A number of a table, as it stands there."""
        return plainly(number)

    def uses(self, identifier: str) -> tuple[str, ...]:
        """Ids that a formula uses."""
        return tuple(self._edition.workbook.uses(identifier))

    def phone_number(self, call: str) -> str:
        """The number to dial in what a farm wrote about whom to call; empty where there is none."""
        found = [re.sub(r"[^+\d]", "", number) for number in _NUMBER.findall(call)]
        return max(found, key=len, default="")

    def sort_by_title(self, items: Iterable[tuple[str, Any]]) -> list[tuple[str, Any]]:
        """Entries in the order of their titles."""
        return sorted(items, key=lambda item: (self._edition.translate(item[1].title).casefold(), item[0]))


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
