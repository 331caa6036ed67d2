"""All entries together. The name of each kind is the name of its folder in content."""

from __future__ import annotations

from generator.model.entry import Entry
from generator.model.measure import Measure, Unit
from generator.model.plan import Farm, Page, Pardon, Plan, Term, Watch, Word
from generator.model.procedure import Phase, Picture, Procedure, Supply
from generator.model.quantity import Choice, Function, Group, NumberSet, Quantity, Table
from generator.model.source import Source


class Library(Entry):
    """Every kind as a mapping of id to entry, in the order read; `farm` holds the one farm this build is for."""

    units: dict[str, Unit] = {}
    measures: dict[str, Measure] = {}
    groups: dict[str, Group] = {}
    sources: dict[str, Source] = {}
    sets: dict[str, NumberSet] = {}
    tables: dict[str, Table] = {}
    functions: dict[str, Function] = {}
    choices: dict[str, Choice] = {}
    quantities: dict[str, Quantity] = {}
    watches: dict[str, Watch] = {}
    phases: dict[str, Phase] = {}
    supplies: dict[str, Supply] = {}
    procedures: dict[str, Procedure] = {}
    pictures: dict[str, Picture] = {}
    terms: dict[str, Term] = {}
    pages: dict[str, Page] = {}
    words: dict[str, Word] = {}
    pardons: dict[str, Pardon] = {}
    plans: dict[str, Plan] = {}
    farm: dict[str, Farm] = {}

    @property
    def this_farm(self) -> Farm:
        """The farm this build is for."""
        return next(iter(self.farm.values()))
