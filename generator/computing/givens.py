"""What is given and not computed: inputs with their ranges, constants, and what each option of a choice brings."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from generator.computing.doubting import Doubt, read_doubt
from generator.computing.findings import Findings
from generator.computing.items import Item
from generator.model.leaves import Path
from generator.model.library import Library
from generator.units import UnitBook, UnitFault
from generator.units.within import lies_within


@dataclass(frozen=True)
class Input:
    """An input in SI. `step` is None where content gives none."""

    default: float
    low: float
    high: float
    step: float | None
    whole: bool

    def refuses(self, value: float) -> bool:
        """Whether a value lies outside the range."""
        return not lies_within(value, self.low, self.high)


@dataclass(frozen=True)
class Givens:
    """Everything a plan can rest on, by id, in SI."""

    inputs: dict[str, Input] = field(default_factory=dict)
    constants: dict[str, float] = field(default_factory=dict)
    choices: dict[str, str] = field(default_factory=dict)
    """The option that each choice takes by default."""
    options: dict[str, dict[str, dict[str, float]]] = field(default_factory=dict)
    """Choice, then option, to the values it brings."""

    doubts: dict[str, Doubt] = field(default_factory=dict)
    """How far inputs and constants may be from the truth, where content says."""

    def brings(self, choice: str) -> frozenset[str]:
        """The ids that any option of a choice gives a value to."""
        return frozenset(name for values in self.options[choice].values() for name in values)


class Taking:
    """Takes value texts into SI, and notes the ones that cannot be."""

    def __init__(self, book: UnitBook, findings: Findings) -> None:
        self.book = book
        self.findings = findings

    def take(self, text: str, item: Item, kind: str, name: str, path: Path) -> float:
        """The SI value of a text at a place in content; where it has none, no number."""
        try:
            return self.book.read(text, item.measure, difference=path == ("step",))
        except UnitFault as fault:
            self.findings.add_value(kind, name, path, fault)
            return math.nan

    def take_doubt(self, text: str, item: Item) -> Doubt | None:
        """A doubt; none where it cannot be read."""
        try:
            return read_doubt(text, item.measure, self.book)
        except UnitFault as fault:
            self.findings.add_value("quantities", item.name, ("doubt",), fault)
            return None


def take_givens(library: Library, items: dict[str, Item], book: UnitBook, findings: Findings) -> Givens:
    """Read every value that content gives."""
    taking = Taking(book, findings)
    givens = Givens()
    for item in items.values():
        if item.quantity.default is not None:
            givens.inputs[item.id] = _take_input(item, taking)
        elif item.quantity.value is not None:
            value = taking.take(item.quantity.value, item, "quantities", item.name, ("value",))
            givens.constants[item.id] = value
        if item.quantity.doubt and (doubt := taking.take_doubt(item.quantity.doubt, item)):
            givens.doubts[item.id] = doubt
    owners: dict[str, str] = {}
    for name, choice in library.choices.items():
        givens.choices[name] = choice.default
        givens.options[name] = {}
        for option_name, option in choice.options.items():
            brought = givens.options[name][option_name] = {}
            for identifier, entry in option.values.items():
                path = ("options", option_name, "values", identifier)
                if owners.setdefault(identifier, name) != name:
                    fault = f"`{identifier}` is brought by the choice `{owners[identifier]}` too"
                    findings.add("choices", name, path, fault, "let one choice bring it")
                brought[identifier] = taking.take(entry.value, items[identifier], "choices", name, (*path, "value"))
    return givens


def _take_input(item: Item, taking: Taking) -> Input:
    def take(text: str | None, *path: str | int) -> float:
        return taking.take(text or "", item, "quantities", item.name, path)

    quantity = item.quantity
    low, high = quantity.range or ("", "")
    least, most = take(low, "range", 0), take(high, "range", 1)
    if least > most:
        fault = f"the range goes down from {low} to {high}"
        taking.findings.add("quantities", item.name, ("range",), fault, "write the least first")
    step = take(quantity.step, "step") if quantity.step else None
    return Input(take(quantity.default, "default"), least, most, step, quantity.whole)
