"""What every page of one build is made from."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from generator.computing import Day, Workbook
from generator.model.library import Library
from generator.model.procedure import Step
from generator.reading import Reading
from generator.units.book import UnitBook

Settings = Mapping[str, float | str]


@dataclass(frozen=True)
class Edition:
    """One farm's content in one language, with the numbers of its plan."""

    reading: Reading
    book: UnitBook
    workbook: Workbook
    settings: Settings
    """Every input in SI and every choice's option, as the plan settles them."""
    day: Day
    translate: Callable[[str], str] = str
    """English text to the edition's language, places for numbers kept."""
    language: str = "en"
    plan: str = ""
    """The title of the plan."""
    version: str = ""
    """Names the content this edition was made from; the same content gives the same version."""
    made_on: str = ""
    """The date of the content, year first."""

    @property
    def library(self) -> Library:
        """The entries themselves."""
        return self.reading.library

    @property
    def first(self) -> str:
        """The system of units that stands first: `us` or `metric`."""
        return self.library.this_farm.first_units

    @property
    def second(self) -> str:
        """The system of units that stands in brackets."""
        return "metric" if self.first == "us" else "us"

    def matches(self, only: Mapping[str, Iterable[str]]) -> bool:
        """Whether the plan has, of each choice named, one of the options named."""
        return all(str(self.settings[choice]) in options for choice, options in only.items())

    def applies(self, step: Step) -> bool:
        """Whether a step is done under the plan."""
        return self.matches(step.only)
