"""The value of every input, choice and constant, from defaults, options, a plan, and changes to the plan."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from typing import Literal

from generator.computing.givens import Givens
from generator.computing.items import Item
from generator.model.library import Library
from generator.problems import Place, Problem, ProblemsFound, did_you_mean, stop_at
from generator.units import UnitBook, UnitFault, show_both

Origin = Literal["change", "plan", "option", "default", "constant"]
Value = float | str


class Settings(dict[str, Value]):
    """SI values and options by id; `origins` tells where each comes from."""

    origins: dict[str, Origin]


class Settler:
    """Settles plans for one workbook."""

    def __init__(self, givens: Givens, items: Mapping[str, Item], book: UnitBook, first: str) -> None:
        self.givens = givens
        self.items = items
        self.book = book
        self.first = first

    def settle(self, plan: Mapping[str, Value], changes: Mapping[str, Value]) -> Settings:
        """Settings from checked values. `settle` in phone/settling.js does the same.

        A change beats the plan, the plan beats an option, an option beats a default. When a change picks another
        option than the plan has, what that choice brings beats the plan, which was written for the other option.
        """
        settings, origins = Settings(), dict[str, Origin]()
        for name, default in self.givens.choices.items():
            settings[name] = changes.get(name, plan.get(name, default))
            origins[name] = "change" if name in changes else "plan" if name in plan else "default"
        brought, overruled = dict[str, float](), set[str]()
        for name, options in self.givens.options.items():
            brought.update(options[str(settings[name])])
            if name in changes and changes[name] != plan.get(name, self.givens.choices[name]):
                overruled |= self.givens.brings(name)
        defaults = {name: entry.default for name, entry in self.givens.inputs.items()}
        for name, value in (defaults | self.givens.constants).items():
            layers: tuple[tuple[Origin, Mapping[str, Value]], ...] = (
                ("change", changes),
                ("plan", {} if name in overruled else plan),
                ("option", brought),
                ("default" if name in defaults else "constant", {name: value}),
            )
            origins[name], settings[name] = next((layer, values[name]) for layer, values in layers if name in values)
        settings.origins = origins
        return settings

    def read(self, texts: Mapping[str, str], where: Callable[[str], Place]) -> dict[str, Value]:
        """Values as people write them, in SI. Raises ProblemsFound with every one that cannot be used."""
        values, problems = dict[str, Value](), list[Problem]()
        for name, text in texts.items():
            try:
                values[name] = self._read(name, text)
            except UnitFault as fault:
                problems.append(Problem(where(name), fault.fault, fault.hint))
        stop_at(problems)
        return values

    def check_plans(self, library: Library, place: Callable[..., Place]) -> None:
        """Raises ProblemsFound with every value of any plan that cannot be used."""
        problems: list[Problem] = []
        for name, plan in library.plans.items():
            try:
                self.read(plan.values, partial(place, "plans", name, "values"))
            except ProblemsFound as found:
                problems += found.problems
        stop_at(problems)

    def _read(self, name: str, text: str) -> Value:
        if name in self.givens.choices:
            options = self.givens.options[name]
            if text not in options:
                hint = did_you_mean(text, options, "options: " + ", ".join(options))
                raise UnitFault(f"`{text}` is no option of `{name}`", hint)
            return text
        if name not in self.givens.inputs:
            raise self._no_input(name)
        entry, item = self.givens.inputs[name], self.items[name]
        value = self.book.read(text, item.measure)
        if entry.refuses(value):
            low, high = (self._show(bound, item) for bound in (entry.low, entry.high))
            raise UnitFault(f"`{name}` is {self._show(value, item)}, out of its range", f"from {low} to {high}")
        if entry.whole and value != round(value):
            raise UnitFault(f"`{name}` counts things, and {text} is not a whole number", "write a whole number")
        return value

    def _no_input(self, name: str) -> UnitFault:
        if name not in self.items:
            known = [*self.givens.inputs, *self.givens.choices]
            return UnitFault(f"unknown input `{name}`", did_you_mean(name, known, "`numbers` prints all of them"))
        if name in self.givens.constants:
            return UnitFault(f"`{name}` is a constant, not an input", "a farm gives its own `value` in its overlay")
        return UnitFault(f"`{name}` is computed, not an input", "set what it depends on")

    def _show(self, value: float, item: Item) -> str:
        return show_both(value, item.measure, self.first, self.book, item.quantity.digits).replace("\u00a0", " ")
