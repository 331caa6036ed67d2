"""What a rule is given to look at, and what it finds."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cached_property

from generator.computing import Workbook
from generator.computing.flaws import Flaw
from generator.model.citations import citations
from generator.model.leaves import Leaf, Path, leaves
from generator.model.library import Library
from generator.model.quantity import Quantity
from generator.model.roles import Formula, Human, Refers
from generator.model.source import Citation
from generator.problems import Problem
from generator.reading import Reading, known_quantities
from generator.reading.placeholders import placeholders

_BRACKETS = re.compile(r"\[[^\]]*\]")
_FAMILY = re.compile(r"([a-z][a-z0-9_]*)\[")
_NAME = re.compile(r"[a-z][a-z0-9_]*")


class Finding(Flaw):
    """What a rule objects to, in which entry."""

    @property
    def entry(self) -> str:
        """The entry as a pardon names it."""
        return f"{self.kind}/{self.name}"

    def problem(self, reading: Reading) -> Problem:
        """The finding with its place."""
        if self.column:
            place = reading.spot(self.kind, self.name, *self.path, column=self.column)
        else:
            place = reading.place(self.kind, self.name, *self.path)
        return Problem(place, self.fault, self.hint)


@dataclass(frozen=True)
class Inspection:
    """The content under inspection, with what several rules want to know of it worked out once."""

    reading: Reading
    workbook: Workbook

    @property
    def library(self) -> Library:
        """The entries."""
        return self.reading.library

    @cached_property
    def quantities(self) -> dict[str, Quantity]:
        """Every id that has a value; families member by member."""
        return known_quantities(self.library)

    @cached_property
    def human(self) -> tuple[Leaf, ...]:
        """Every text for people."""
        return tuple(leaves(self.library, Human))

    @cached_property
    def in_formulas(self) -> frozenset[str]:
        """Every name in a formula, a condition or a requirement; `family[each]` names all members of all sets."""
        texts = [leaf.text for leaf in leaves(self.library, Formula)]
        members = [member for numbers in self.library.sets.values() for member in numbers.members]
        families = {name for text in texts for name in _FAMILY.findall(text)}
        names = {name for text in texts for name in _NAME.findall(_BRACKETS.sub("", text))}
        return frozenset(names | {f"{family}_{member}" for family in families for member in members})

    @cached_property
    def in_texts(self) -> frozenset[str]:
        """Every name in braces."""
        return frozenset(found.name for leaf in self.human for found in placeholders(leaf.text))

    @cached_property
    def citations(self) -> tuple[tuple[str, str, Path, Citation], ...]:
        """Every citation with the kind and id of its entry, and its path there."""
        return tuple(citations(self.library))

    def referred(self, kind: str) -> frozenset[str]:
        """Every id of that kind that a field names, other than to give it a value."""
        return frozenset(leaf.text for leaf in self._references if kind in _kinds(leaf) and "values" not in leaf.path)

    @cached_property
    def _references(self) -> tuple[Leaf, ...]:
        return tuple(leaves(self.library, Refers))


def _kinds(leaf: Leaf) -> tuple[str, ...]:
    return leaf.role.kinds if isinstance(leaf.role, Refers) else ()
