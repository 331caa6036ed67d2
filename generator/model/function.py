"""Formulas with arguments."""

from __future__ import annotations

from generator.model.entry import Entry, Facts, FormulaText, Identifier, Title, UnitText
from generator.model.source import Citations


class Argument(Entry):
    """What a function takes: a value of `unit`, or with `number` the bare number of such units."""

    unit: UnitText
    number: bool = False
    title: Title


class Function(Entry):
    """A formula with arguments, written once and used by name in other formulas."""

    title: Title
    arguments: dict[Identifier, Argument]
    unit: UnitText
    point: bool = False
    formula: FormulaText
    accuracy: Facts = ""
    source: Citations
