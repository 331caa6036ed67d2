"""Everything that has a value: inputs, constants and results, and what formulas are made of."""

from __future__ import annotations

from generator.model.entry import Entry, FormulaText, Identifier, Line, Prose, Sentence, Title, UnitText, ValueText
from generator.model.source import Citations


class Requirement(Entry):
    """A condition without which the formula makes no sense, and the sentence a person then reads."""

    that: FormulaText
    otherwise: Sentence
    input: Identifier | None = None
    """The input to look at when the condition fails."""


class Quantity(Entry):
    """An input (`default` and `range`), a constant (`value`) or a result (`formula`)."""

    title: Title
    help: Prose = ""
    group: Identifier
    measure: Identifier
    default: ValueText | None = None
    range: tuple[ValueText, ValueText] | None = None
    step: ValueText | None = None
    """What one tap on a stepper adds, in the measure's own units."""
    whole: bool = False
    """An input that counts things and so takes whole numbers only."""
    value: ValueText | None = None
    formula: FormulaText | None = None
    each: Identifier | None = None
    """A set: one quantity `<id>_<member>` for every member, which the formula and the title call `member`."""
    require: tuple[Requirement, ...] = ()
    digits: int | None = None
    accuracy: Prose = ""
    """Within how much the model agrees, over what range, with which data."""
    source: Citations


class OptionValue(Entry):
    """What a quantity is by default when an option is chosen."""

    value: ValueText
    source: Citations


class Statement(Entry):
    """Something an option says to the reader, with its source: a line of a rule, a note on a species."""

    says: Prose
    source: Citations


class Option(Entry):
    """One possibility of a choice, the defaults it brings, and what it says."""

    title: Title
    help: Prose = ""
    values: dict[Identifier, OptionValue] = {}
    statements: dict[Identifier, Statement] = {}
    caution: Sentence = ""


class Choice(Entry):
    """An input that takes one of its options, by id."""

    title: Title
    help: Prose = ""
    group: Identifier
    default: Identifier
    options: dict[Identifier, Option]


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
    accuracy: Prose = ""
    source: Citations


class Axis(Entry):
    """One side of a table, in rising order."""

    title: Title
    unit: UnitText
    points: tuple[float, ...]


class Table(Entry):
    """Values over one or two axes, read between the points by straight lines."""

    title: Title
    axes: dict[Identifier, Axis]
    unit: UnitText
    point: bool = False
    values: tuple[float, ...] | tuple[tuple[float, ...], ...]
    """One axis: one number a point. Two axes: one row a point of the first axis."""
    hold_ends: bool = False
    """Outside the table the nearest end is used when true; when false the value is refused by name."""
    source: Citations


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
