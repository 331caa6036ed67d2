"""All entries together. The name of each kind is the name of its folder in content."""

from __future__ import annotations

from functools import cached_property
from typing import Any, get_args

from pydantic import PrivateAttr, field_validator

from generator.model.choice import Choice
from generator.model.crew import Crew, Question
from generator.model.entry import Entry, Identifier, SourceIdentifier, UnitText
from generator.model.function import Function
from generator.model.measure import Measure, Unit
from generator.model.number_set import NumberSet
from generator.model.paper import Paper
from generator.model.picture import Picture
from generator.model.plan import Board, Farm, Page, Pardon, Plan, Term, Watch, Word
from generator.model.procedure import Phase, Procedure, Signal, Supply
from generator.model.quantity import Group, Quantity
from generator.model.record import Lesson, Logged, Tally
from generator.model.source import Citation, Source
from generator.model.table import Table
from generator.model.teaching import Drill, Instruction, Path, Skill, Verbs
from generator.model.view import View


class Library(Entry):
    """Every kind as a mapping of id to entry, in the order read; `farm` holds the one farm this build is for.

    Watches alone go by how bad they are, so that the worst comes first wherever they are listed, on phones too.
    """

    units: dict[UnitText, Unit] = {}
    measures: dict[Identifier, Measure] = {}
    groups: dict[Identifier, Group] = {}
    sources: dict[SourceIdentifier, Source] = {}
    sets: dict[Identifier, NumberSet] = {}
    tables: dict[Identifier, Table] = {}
    functions: dict[Identifier, Function] = {}
    choices: dict[Identifier, Choice] = {}
    quantities: dict[Identifier, Quantity] = {}
    watches: dict[Identifier, Watch] = {}
    boards: dict[Identifier, Board] = {}
    phases: dict[Identifier, Phase] = {}
    supplies: dict[Identifier, Supply] = {}
    procedures: dict[Identifier, Procedure] = {}
    pictures: dict[Identifier, Picture] = {}
    views: dict[Identifier, View] = {}
    crews: dict[Identifier, Crew] = {}
    questions: dict[Identifier, Question] = {}
    readings: dict[Identifier, Logged] = {}
    tallies: dict[Identifier, Tally] = {}
    lessons: dict[Identifier, Lesson] = {}
    verbs: dict[Identifier, Verbs] = {}
    instructions: dict[Identifier, Instruction] = {}
    skills: dict[Identifier, Skill] = {}
    drills: dict[Identifier, Drill] = {}
    paths: dict[Identifier, Path] = {}
    papers: dict[Identifier, Paper] = {}
    terms: dict[Identifier, Term] = {}
    pages: dict[Identifier, Page] = {}
    words: dict[Identifier, Word] = {}
    pardons: dict[Identifier, Pardon] = {}
    plans: dict[Identifier, Plan] = {}
    farm: dict[Identifier, Farm] = {}
    _gathered: dict[str, tuple[object, list[Any]]] = PrivateAttr(default_factory=dict)

    @field_validator("watches")
    @classmethod
    def _worst_first(cls, watches: dict[str, Watch]) -> dict[str, Watch]:
        signals = get_args(Signal)
        return dict(sorted(watches.items(), key=lambda each: (not each[1].stop, signals.index(each[1].signal))))

    @property
    def gathered(self) -> dict[str, tuple[object, list[Any]]]:
        """What `leaves.py` found in the entries of each kind, beside those entries."""
        return self._gathered

    @cached_property
    def member_titles(self) -> dict[str, str]:
        """Titles of the members of sets, in the language of content; the first set that has a member names it."""
        members = [each for entry in self.sets.values() for each in entry.members.items()]
        return {name: member.title for name, member in reversed(members)}

    def is_remembered(self, citation: Citation) -> bool:
        """Whether it names memory, a work that was cited from memory, or a work that nobody here has read."""
        read = self.sources[citation.id].read if citation.id else ""
        return citation.plain == "from memory" or citation.memory or read == "memory"

    @property
    def this_farm(self) -> Farm:
        """The farm this build is for."""
        return next(iter(self.farm.values()))
