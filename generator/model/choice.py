"""A choice: an input that takes one of its options, and the values that an option brings."""

from __future__ import annotations

from pydantic import model_validator

from generator.model.entry import (
    Entry,
    Facts,
    GroupIdentifier,
    Identifier,
    Prose,
    QuantityIdentifier,
    Sentence,
    Title,
    ValueText,
    fault,
)
from generator.model.source import Citations


class OptionValue(Entry):
    """What a quantity is by default when an option is chosen."""

    value: ValueText
    source: Citations


class Statement(Entry):
    """Something an option says to the reader, with its source: a line of a rule, a note on a species."""

    says: Facts
    source: Citations


class Option(Entry):
    """One possibility of a choice, the defaults it brings, and what it says."""

    title: Title
    help: Prose = ""
    values: dict[QuantityIdentifier, OptionValue] = {}
    statements: dict[Identifier, Statement] = {}
    caution: Sentence = ""


class Choice(Entry):
    """An input that takes one of its options, by id."""

    title: Title
    help: Prose = ""
    group: GroupIdentifier
    default: Identifier
    options: dict[Identifier, Option]
    covers: bool = False
    """The page of what is covered tells for each option how far the procedures go."""

    @model_validator(mode="after")
    def _default_is_an_option(self) -> Choice:
        if self.default not in self.options:
            raise fault(
                f"has the default `{self.default}`, which is none of its options", "options: " + ", ".join(self.options)
            )
        return self
