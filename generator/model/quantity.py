"""Everything that has a value: inputs, constants and results, and what formulas are made of."""

from __future__ import annotations

import itertools
from typing import Annotated

from pydantic import Discriminator, Tag, model_validator

from generator.model.entry import (
    Entry,
    Facts,
    FormulaText,
    GroupIdentifier,
    Identifier,
    InputIdentifier,
    Line,
    MeasureIdentifier,
    Prose,
    QuantityIdentifier,
    Sentence,
    SetIdentifier,
    Title,
    UnitText,
    ValueText,
    fault,
)
from generator.model.source import Citations


class Requirement(Entry):
    """A condition without which the formula makes no sense, and the sentence a person then reads."""

    that: FormulaText
    otherwise: Sentence
    input: InputIdentifier | None = None
    """The input to look at when the condition fails."""


class Quantity(Entry):
    """An input (`default` and `range`), a constant (`value`) or a result (`formula`)."""

    title: Title
    help: Prose = ""
    group: GroupIdentifier
    measure: MeasureIdentifier
    default: ValueText | None = None
    range: tuple[ValueText, ValueText] | None = None
    step: ValueText | None = None
    """What one tap on a stepper adds, in the measure's own units."""
    whole: bool = False
    """An input that counts things and so takes whole numbers only."""
    value: ValueText | None = None
    formula: FormulaText | None = None
    each: SetIdentifier | None = None
    """A set: one quantity `<id>_<member>` for every member, which the formula and the title call `member`."""
    require: tuple[Requirement, ...] = ()
    digits: int | None = None
    accuracy: Facts = ""
    """Within how much the model agrees, over what range, with which data."""
    source: Citations

    @model_validator(mode="after")
    def _one_kind(self) -> Quantity:
        given = [name for name in ("default", "value", "formula") if getattr(self, name) is not None]
        if len(given) != 1:
            raise fault(
                f"has `{'` and `'.join(given)}`" if given else "has no `default`, `value` or `formula`",
                "an input has `default` and `range`, a constant `value`, a result `formula`: one of the three",
            )
        if self.default is not None and self.range is None:
            raise fault("is an input without a `range`", "write `range: [least, most]`")
        if self.default is None and (self.range is not None or self.step is not None or self.whole):
            raise fault("has a `range`, `step` or `whole` and is no input", "take them out, or give it a `default`")
        if self.require and self.formula is None:
            raise fault("has `require` without a `formula`", "move it to a quantity that is computed from this one")
        return self


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

    @model_validator(mode="after")
    def _default_is_an_option(self) -> Choice:
        if self.default not in self.options:
            raise fault(
                f"has the default `{self.default}`, which is none of its options", "options: " + ", ".join(self.options)
            )
        return self


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


class Axis(Entry):
    """One side of a table, in rising order."""

    title: Title
    unit: UnitText
    points: tuple[float, ...]

    @model_validator(mode="after")
    def _rising(self) -> Axis:
        if len(self.points) < 2:
            raise fault("needs two points or more", "a table is read between its points")
        for left, right in itertools.pairwise(self.points):
            if not left < right:
                raise fault(
                    f"has points that do not rise: {right:g} follows {left:g}", "put the points in rising order"
                )
        return self


Row = tuple[float, ...]


def _rows(values: object) -> str:
    """Which shape is meant: told by the first of the values, so that a slip further on is reported where it is."""
    return "rows" if isinstance(values, tuple) and values and isinstance(values[0], tuple) else "row"


class Table(Entry):
    """Values over one or two axes, read between the points by straight lines."""

    title: Title
    axes: dict[Identifier, Axis]
    unit: UnitText
    point: bool = False
    values: Annotated[Annotated[Row, Tag("row")] | Annotated[tuple[Row, ...], Tag("rows")], Discriminator(_rows)]
    """One axis: one number a point. Two axes: one row a point of the first axis."""
    hold_ends: bool = False
    """Outside the table the nearest end is used when true; when false the value is refused by name."""
    source: Citations

    @model_validator(mode="after")
    def _values_fit_axes(self) -> Table:
        lengths = [len(axis.points) for axis in self.axes.values()]
        if not 1 <= len(lengths) <= 2:
            raise fault(f"has {len(lengths)} axes", "a table has one axis or two")
        rows = [row for row in self.values if isinstance(row, tuple)]
        if len(self.values) != lengths[0] or (len(lengths) == 2) != bool(rows):
            raise fault(
                f"has `values` that are not {_expected(lengths)}", "count the values against the points of the axes"
            )
        for number, row in enumerate(rows, 1):
            if len(row) != lengths[1]:
                raise fault(f"has {len(row)} numbers in row {number} of `values`, not {lengths[1]}", "count them again")
        return self


def _expected(lengths: list[int]) -> str:
    return f"{lengths[0]} numbers" if len(lengths) == 1 else f"{lengths[0]} rows of {lengths[1]} numbers"


class Member(Entry):
    """One member of a set."""

    title: Title


class NumberSet(Entry):
    """A list of ids to go through: `rate[each] for each in line_station` reads `rate_<member>`."""

    title: Title
    members: dict[Identifier, Member]


class Group(Entry):
    """A heading under which quantities stand, in `order`."""

    title: Title
    order: int
    help: Line = ""
