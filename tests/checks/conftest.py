"""The product's own workbook, with each published check and each probe of the laws as one more quantity."""

from __future__ import annotations

import shutil
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import settings

from generator.computing import Day, Workbook
from generator.reading import read_library
from tests.formula.phone_machine import Hand, compute
from tests.repeating import TIMES

settings.register_profile("checks", deadline=None, max_examples=25 * TIMES, derandomize=True, database=None)
settings.load_profile("checks")

HERE = Path(__file__).parent
CONTENT = HERE.parents[1] / "content"
PROBES = {
    "vapour_pressure": ("saturation_pressure(scald_fill_temperature)", "pressure"),
    "vaporisation_heat": ("vaporisation_heat(scald_fill_temperature)", "mass_heat"),
    "water_density": ("water_density(scald_fill_temperature)", "density"),
    "water_specific_heat": ("water_specific_heat(scald_fill_temperature)", "specific_heat"),
}
"""Functions that tests run over a range: a formula over inputs, and its measure."""


@dataclass(frozen=True)
class Check:
    """One published figure: what is computed, from which inputs, and how near it must come."""

    name: str
    what: str
    expression: str
    measure: str
    expected: str
    within: str
    because: str
    source: object
    set: Mapping[str, str] = field(default_factory=dict)
    missed: str = ""
    """Where the print is not met: how far off at most. It is then an error to come nearer than `within` unnoticed."""

    @property
    def quantity(self) -> str:
        """The quantity that stands for it in the workbook."""
        return f"check_{self.name.replace('-', '_')}"


def published_checks() -> list[Check]:
    """Every check of this folder, in the order of files and of the print."""
    found = []
    for file in sorted(HERE.glob("*.yml")):
        for name, fields in yaml.load(file.read_text(encoding="utf-8"), yaml.CSafeLoader).items():
            found.append(Check(f"{file.stem}-{name}", **fields))
    return found


class Bench:
    """Computes days from nothing but defaults and what a test sets."""

    def __init__(self, workbook: Workbook) -> None:
        self.workbook = workbook
        self._days: dict[tuple[object, ...], Mapping[str, Any]] = {}
        self._rests_on: dict[tuple[str, ...], frozenset[str]] = {}

    def run(self, changes: Mapping[str, str]) -> Day:
        """The whole day, computed in Python."""
        return self.workbook.compute(self.workbook.settle({}, changes))

    def day(self, changes: Mapping[str, str], *only: str) -> Mapping[str, float]:
        """Its numbers, without the options of choices: all, or only those named and what they rest on."""
        settings = self.workbook.settle({}, changes)
        values = self.workbook.compute(settings, self._needed(only) if only else None).values
        return {name: value for name, value in values.items() if isinstance(value, int | float)}

    def _needed(self, only: tuple[str, ...]) -> frozenset[str]:
        if only not in self._rests_on:
            self._rests_on[only] = frozenset().union(*map(self.workbook.rests_on, only))
        return self._rests_on[only]

    def by(self, hand: Hand, changes: Mapping[str, str]) -> Mapping[str, Any]:
        """`values`, `refused` and `alerts`, by Python or by the shipped JavaScript; once for the same changes."""
        key = (hand, *sorted(changes.items()))
        if key not in self._days:
            self._days[key] = compute(self.workbook, self.workbook.settle({}, changes), hand)
        return self._days[key]


def _bench(farm: Path, formulas: Mapping[str, tuple[str, str]]) -> Bench:
    """The demonstration farm with more quantities."""
    shutil.copytree(CONTENT / "farms" / "demo", farm)
    quantities = {
        name: {"title": "Check", "group": "properties", "measure": measure, "formula": formula, "source": "arithmetic"}
        for name, (formula, measure) in formulas.items()
    }
    (farm / "quantities").mkdir(exist_ok=True)
    (farm / "quantities" / "checks.yml").write_text(yaml.safe_dump(quantities, allow_unicode=True), encoding="utf-8")
    return Bench(Workbook.of(read_library(CONTENT / "shared", farm)))


@pytest.fixture(scope="session")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Bench:
    """The product, with the probes."""
    return _bench(tmp_path_factory.mktemp("laws") / "farm", {f"probe_{name}": each for name, each in PROBES.items()})


@pytest.fixture(scope="session")
def printed(tmp_path_factory: pytest.TempPathFactory) -> Bench:
    """The product, with the published checks."""
    formulas = {check.quantity: (check.expression, check.measure) for check in published_checks()}
    return _bench(tmp_path_factory.mktemp("checks") / "farm", formulas)
