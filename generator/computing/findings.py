"""Where problems in quantities, functions and watches are gathered, with the part of the text that is at fault."""

from __future__ import annotations

from typing import Protocol

from generator.formula import FormulaFault, FormulaFaults
from generator.model.leaves import Path
from generator.model.library import Library
from generator.problems import Place, Problem
from generator.units import UnitFault


class Readable(Protocol):
    """Content as read, which knows where each of its parts is written."""

    @property
    def library(self) -> Library: ...  # noqa: D102

    def place(self, kind: str, name: str, *path: str | int) -> Place:
        """Where a value is written."""

    def spot(self, kind: str, name: str, *path: str | int, column: int) -> Place:
        """Where a character of a text is written; `column` counts from 1."""


class Findings:
    """Problems of one stage."""

    def __init__(self, read: Readable) -> None:
        self.read = read
        self.problems: list[Problem] = []

    def add(self, kind: str, name: str, path: Path, fault: str, hint: str = "") -> None:
        """A problem at a value."""
        self.problems.append(Problem(self.read.place(kind, name, *path), fault, hint))

    def add_value(self, kind: str, name: str, path: Path, fault: UnitFault) -> None:
        """A value text or a unit text that cannot be taken."""
        self.add(kind, name, path, fault.fault, fault.hint)

    def add_formula(self, kind: str, name: str, path: Path, text: str, found: FormulaFault | FormulaFaults) -> None:
        """What is wrong with a formula, with carets below the part meant."""
        for fault in found.faults:
            place = self.read.spot(kind, name, *path, column=fault.column)
            label = str(next(step for step in reversed(path) if isinstance(step, str)))
            self.problems.append(Problem(place, fault.fault, fault.hint, fault.excerpt(text, label)))
