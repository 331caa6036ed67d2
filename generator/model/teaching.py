"""How people are taught: what they must show, what they go through first, and what they are asked."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, StringConstraints, model_validator

from generator.model.entry import (
    Entry,
    FormulaText,
    Identifier,
    InputIdentifier,
    MeasureIdentifier,
    PictureIdentifier,
    ProcedureIdentifier,
    QuantityIdentifier,
    Sentence,
    Title,
    ValueText,
    Verbatim,
    Visible,
    fault,
)
from generator.model.roles import Human, Refers
from generator.model.source import Citations

Asked = Annotated[str, StringConstraints(min_length=1, max_length=240), Visible, Human(names=True)]
"""A sentence of a drill: `{name}` stands for a quantity, or for a number that the drill draws or works out."""
Point = Annotated[str, StringConstraints(min_length=1, max_length=100), Visible, Human(names=True)]
"""A line for whoever teaches: `{title}` stands for the job, `{needs}` and `{steps}` for how many there are."""
DrillIdentifier = Annotated[Identifier, Refers("drills")]
TermIdentifier = Annotated[Identifier, Refers("terms")]
PathIdentifier = Annotated[Identifier, Refers("paths")]
SkillIdentifier = Annotated[Identifier, Refers("skills")]


class Verbs(Entry):
    """Words that a step may begin with, in the language that content is written in."""

    words: tuple[Verbatim, ...]


class Instruction(Entry):
    """One of the steps by which a job is taught, as a list that whoever teaches goes through."""

    title: Title
    order: int
    points: dict[Identifier, Point]
    shows_steps: bool = False
    """Whether the steps of the job follow, each with its key points and reasons."""


class Skill(Entry):
    """Something a person must have shown before working alone at the places that ask for it."""

    title: Title
    order: int
    shown: Sentence
    """What whoever signs must have seen."""
    procedure: ProcedureIdentifier
    """Where it is learned."""
    places: tuple[ProcedureIdentifier, ...] = ()
    """Where nobody works without it."""
    lasts: QuantityIdentifier | None = None
    """How long a signature counts; a time of nought means for good."""
    source: Citations


class Leg(Entry):
    """A stretch of a path: steps and hazards of a procedure, words, or questions."""

    title: Title
    says: Sentence = ""
    procedure: ProcedureIdentifier | None = None
    steps: tuple[Identifier, ...] = ()
    cautions: tuple[Identifier, ...] = ()
    stops: tuple[Identifier, ...] = ()
    picture: PictureIdentifier | None = None
    terms: tuple[TermIdentifier, ...] = ()
    drills: tuple[DrillIdentifier, ...] = ()

    @model_validator(mode="after")
    def _holds_something(self) -> Leg:
        if not (self.procedure or self.terms or self.drills):
            raise fault("leads nowhere", "give a `procedure`, `terms` or `drills`")
        if (self.steps or self.cautions or self.stops) and not self.procedure:
            raise fault("names parts of no procedure", "write the `procedure` they stand in")
        return self


class Path(Entry):
    """A way in: what to read and to answer, in order, before a place is taken."""

    title: Title
    order: int
    help: Sentence = ""
    minutes: Annotated[int, Field(ge=1, le=60)]
    place: ProcedureIdentifier | None = None
    before: tuple[PathIdentifier, ...] = ()
    """Paths to go first."""
    legs: dict[Identifier, Leg]
    skills: tuple[SkillIdentifier, ...] = ()
    """What is to be shown and signed at the end."""


class Written(Entry):
    """Where the answer is written: a part of a procedure."""

    procedure: ProcedureIdentifier
    part: Literal["step", "caution", "stop", "fault"]
    id: Identifier


class Draw(Entry):
    """A number drawn anew each time the question is asked."""

    measure: MeasureIdentifier
    low: ValueText
    high: ValueText


class Worked(Entry):
    """A number worked out from the day's numbers and from what was drawn."""

    measure: MeasureIdentifier
    formula: FormulaText


class Answer(Entry):
    """Something to choose: right or wrong as written, or by a condition on the numbers of the question."""

    says: Asked
    right: bool = False
    when: FormulaText | None = None
    """It is right while this holds."""
    why: Asked = ""
    """Why it looks right, and is not."""


class Drill(Entry):
    """A question: choose one, or put the steps of a procedure in order."""

    asks: Asked
    picture: PictureIdentifier | None = None
    vary: dict[InputIdentifier, tuple[ValueText, ValueText]] = {}
    """Inputs of the plan that are drawn anew within bounds."""
    draws: dict[Identifier, Draw] = {}
    works: dict[Identifier, Worked] = {}
    answers: dict[Identifier, Answer] = {}
    arrange: tuple[Identifier, ...] = ()
    """Steps of the procedure it is written in, to be put in order."""
    why: Asked
    written: Written

    @model_validator(mode="after")
    def _one_kind(self) -> Drill:
        if bool(self.answers) == bool(self.arrange):
            raise fault("has both or none of `answers` and `arrange`", "give one of the two")
        if self.arrange and self.written.part != "step":
            raise fault("arranges steps and is not written in one", "write `part: step` with the first of them")
        return self
