"""The workbook of one content: checked, in order, and ready to compute."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from generator.computing.day import NOT_FINITE, NOT_FINITE_SENTENCE, Day
from generator.computing.explaining import explain, explain_function
from generator.computing.findings import Findings, Readable
from generator.computing.givens import Givens, take_givens
from generator.computing.items import Item, write_out
from generator.computing.linking import Linking, Result
from generator.computing.naming import make_scope
from generator.computing.phone_formulas import print_phone_formulas
from generator.computing.running import Machine
from generator.computing.settling import Settings, Settler
from generator.computing.spreading import Likely, likely
from generator.computing.tables import in_si
from generator.computing.units_in_content import check_units
from generator.formula import Node, Scope, Working
from generator.formula.runtime import Table
from generator.model.library import Library
from generator.problems import Place, stop_at
from generator.units import UnitBook


@dataclass(frozen=True)
class Workbook:
    """Made by `of`. Ids are those of quantities and choices; a family has one id for each member of its set."""

    library: Library
    book: UnitBook
    items: Mapping[str, Item]
    givens: Givens
    scope: Scope
    functions: Mapping[str, Node]
    results: Mapping[str, Result]
    watches: Mapping[str, Node]

    @classmethod
    def of(cls, read: Readable, memory: Path | None = None) -> Workbook:
        """Check everything that has a value. Raises ProblemsFound with all problems of the first bad stage.

        The stages: units and measures; values; formulas. `memory` is a file that keeps the sizes of units.
        """
        library, findings = read.library, Findings(read)
        book = UnitBook(library.units, memory)
        check_units(library, book, findings)
        stop_at(findings.problems)
        items = write_out(library, book, findings)
        givens = take_givens(library, items, book, findings)
        stop_at(findings.problems)
        scope = make_scope(library, items, book)
        linking = Linking(library, scope, findings)
        functions, results, watches = linking.functions(), linking.results(items), linking.watches()
        stop_at(findings.problems)
        workbook = cls(library, book, items, givens, scope, functions, results, watches)
        workbook.settler.check_plans(library, read.place)
        return workbook

    @property
    def ids(self) -> tuple[str, ...]:
        """Choices, inputs, constants, then results, each after those it uses."""
        return (*self.givens.choices, *self.givens.inputs, *self.givens.constants, *self.results)

    def uses(self, identifier: str) -> tuple[str, ...]:
        """The ids that a formula and its requirements name; nothing for what is given."""
        return self.results[identifier].uses if identifier in self.results else ()

    def rests_on(self, identifier: str) -> frozenset[str]:
        """Everything a quantity is computed from, down to inputs, choices and constants, itself included."""
        found, waiting = set[str](), [identifier]
        while waiting:
            name = waiting.pop()
            if name not in found:
                found.add(name)
                waiting += self.uses(name)
        return frozenset(found)

    def how_sure(self, settings: Mapping[str, float | str], identifier: str) -> Likely | None:
        """Where a result most likely lies, from what its inputs and constants may truly be within their ranges."""
        ranges = {}
        for name, doubt in self.givens.doubts.items():
            least, most = doubt.around(float(settings[name]))
            limits = self.givens.inputs.get(name)
            ranges[name] = (max(least, limits.low), min(most, limits.high)) if limits else (least, most)
        return likely(self, settings, identifier, ranges)

    def settle(self, plan_values: Mapping[str, str], changes: Mapping[str, str], where: str = "--set") -> Settings:
        """Every input, choice and constant, in SI. Raises ProblemsFound with all values that cannot be used."""
        plan = self.settler.read(plan_values, lambda name: Place(f"plan, {name}"))
        return self.settler.settle(plan, self.settler.read(changes, lambda name: Place(f"{where} {name}")))

    def compute(self, settings: Mapping[str, float | str], wanted: Collection[str] | None = None) -> Day:
        """Every number at those settings, or only those wanted, which must name all they rest on."""
        return self._machine.run(settings, wanted)

    def evaluate(self, tree: Node, values: Mapping[str, float | str]) -> float | str | None:
        """What a formula that is not of this workbook gives at those values; None where it has no finite value."""
        return self._machine.evaluate(tree, values)

    def working(self, identifier: str, day: Day | None = None, translate: Callable[[str], str] = str) -> Working:
        """The working of a result in MathML, at a day's values, or at those of the farm's own plan."""
        return explain(self, identifier, (day or self._own_day).values, translate)

    def function_in_words(self, name: str, translate: Callable[[str], str] = str) -> str:
        """A declared function in MathML."""
        return explain_function(self, name, translate)

    def sentences(self) -> dict[str, str]:
        """What refusals say, in English, by the key that Day and the phone give."""
        keyed = {each.key: each.sentence for result in self.results.values() for each in result.conditions}
        return {NOT_FINITE: NOT_FINITE_SENTENCE, **keyed}

    def javascript(self) -> str:
        """The text of `phone/formulas.js`."""
        return self._phone_formulas

    @cached_property
    def plan(self) -> dict[str, float | str]:
        """The values of the farm's own plan, in SI."""
        return self.settler.read(self.library.plans[self.library.this_farm.plan].values, Place)

    @cached_property
    def settler(self) -> Settler:
        """Settles plans."""
        return Settler(self.givens, self.items, self.book, self.library.this_farm.first_units)

    @cached_property
    def _own_day(self) -> Day:
        return self.compute(self.settler.settle(self.plan, {}))

    @cached_property
    def _phone_formulas(self) -> str:
        return print_phone_formulas(self)

    @cached_property
    def tables(self) -> dict[str, Table]:
        """Tables in SI."""
        return {name: in_si(entry, self.book) for name, entry in self.library.tables.items()}

    @cached_property
    def _machine(self) -> Machine:
        functions = {name: (self.scope.functions[name], tree) for name, tree in self.functions.items()}
        return Machine(self.book, functions, self.tables, self.results, self.watches)
