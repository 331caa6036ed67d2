"""Papers of a day beside the cards, which are made from procedures: boards, forms, labels and tags."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from generator.model.entry import (
    ChoiceIdentifier,
    Entry,
    Facts,
    Identifier,
    Line,
    PhaseIdentifier,
    PictureIdentifier,
    ProcedureIdentifier,
    QuantityIdentifier,
    Sentence,
    Title,
    fault,
)
from generator.model.source import Citations

Millimetres = Annotated[float, Field(ge=0, le=420)]
Count = Annotated[int, Field(ge=1, le=60)]


class Span(Entry):
    """A stretch of the day between two times of the clock."""

    title: Title
    begins: QuantityIdentifier
    ends: QuantityIdentifier
    waiting: bool = False
    """Nobody stands there all the time: drawn hatched."""


class Stand(Entry):
    """A place where people stand, and the one thing to watch there."""

    title: Title
    procedure: ProcedureIdentifier
    people: QuantityIdentifier
    watch: Line


class DayBoard(Entry):
    """The day on one sheet for everybody."""

    moments: dict[QuantityIdentifier, Title]
    spans: dict[Identifier, Span]
    stands: dict[Identifier, Stand]
    stops: tuple[Line, ...]


class Column(Entry):
    """A column of a form; `share` is its width beside that of its neighbours."""

    title: Title
    share: Annotated[float, Field(gt=0, le=20)] = 1


class Form(Entry):
    """A headed table with room to write. Rows are blank, or begin with `lines`."""

    title: Title
    note: Sentence = ""
    columns: dict[Identifier, Column]
    rows: Annotated[int, Field(ge=0, le=60)] = 0
    lines: tuple[Line, ...] = ()


class SignOff(Entry):
    """A row for each procedure of some phases, with a column for each stage of learning it."""

    phases: tuple[PhaseIdentifier, ...]
    stages: dict[Identifier, Title]


class Stock(Entry):
    """A sheet of label stock by its measures, in millimetres."""

    title: Title
    paper: Literal["us-letter", "a4"]
    columns: Count
    rows: Count
    width: Millimetres
    height: Millimetres
    left: Millimetres
    top: Millimetres
    gap_across: Millimetres = 0
    gap_down: Millimetres = 0
    apart: bool = False
    """Boxed handling words have no room beside the rest: they are a label of their own, in every other column."""

    @model_validator(mode="after")
    def _on_the_sheet(self) -> Stock:
        wide, high = {"us-letter": (215.9, 279.4), "a4": (210, 297)}[self.paper]
        if self.left + self.columns * self.width + (self.columns - 1) * self.gap_across > wide + 0.05:
            raise fault("is wider than its sheet", "measure the stock again, in millimetres")
        if self.top + self.rows * self.height + (self.rows - 1) * self.gap_down > high + 0.05:
            raise fault("is higher than its sheet", "measure the stock again, in millimetres")
        return self


class LabelLine(Entry):
    """A line of a label; `large` ones are read first, `small` ones tell of handling, boxed under a `heading`."""

    says: Facts
    size: Literal["large", "plain", "heading", "small"] = "plain"
    sign: PictureIdentifier | None = None
    """The drawing beside a small line."""
    only: dict[ChoiceIdentifier, tuple[Identifier, ...]] = {}
    source: Citations


class Labels(Entry):
    """What stands on a label, for each stock. Farm and address come from the farm."""

    check: Sentence
    """The warning printed on the sheet of proof that goes with the labels."""
    both: Sentence = ""
    """What that sheet says where handling words are a label of their own."""
    lines: dict[Identifier, LabelLine]
    blanks: dict[Identifier, Title]
    """What is written by hand, with a line to write on."""
    stocks: dict[Identifier, Stock]


class Tag(Entry):
    """What hangs on a tub or a bottle."""

    title: Title
    number: QuantityIdentifier | None = None
    lines: tuple[Line, ...] = ()
    blanks: tuple[Title, ...] = ()


class Paper(Entry):
    """A paper of one of the kinds; `supplies` is the list of things to bring, `halves` are two cards on a sheet."""

    title: Title
    order: int
    intro: Sentence = ""
    """Stands below the title, where a paper has room for it."""
    board: DayBoard | None = None
    forms: dict[Identifier, Form] = {}
    sign_off: SignOff | None = None
    supplies: bool = False
    labels: Labels | None = None
    tags: dict[Identifier, Tag] = {}
    halves: tuple[ProcedureIdentifier, ...] = ()
    emergency: PhaseIdentifier | None = None

    @property
    def kinds(self) -> list[str]:
        """The parts that are given: exactly one, once checked."""
        parts = ("board", "forms", "sign_off", "supplies", "labels", "tags", "halves", "emergency")
        return [name for name in parts if getattr(self, name)]

    @model_validator(mode="after")
    def _one_kind(self) -> Paper:
        if len(self.kinds) != 1:
            given = f"has `{'` and `'.join(self.kinds)}`" if self.kinds else "has nothing to print"
            raise fault(given, "give one of board, forms, sign_off, supplies, labels, tags, halves, emergency")
        if self.intro and self.kinds[0] in ("board", "halves", "emergency"):
            raise fault(f"has an intro, and no `{self.kinds[0]}` has room for one", "take the intro out")
        return self
