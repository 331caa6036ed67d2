"""What is done at a station: checklist, cautions, stops, faults."""

from __future__ import annotations

from typing import Annotated, Literal, get_args

from pydantic import BeforeValidator, model_validator

from generator.model.entry import (
    ChoiceIdentifier,
    Entry,
    GroupIdentifier,
    Identifier,
    Line,
    PhaseIdentifier,
    PictureIdentifier,
    QuantityIdentifier,
    ReadingIdentifier,
    Round,
    Sentence,
    Sought,
    SupplyIdentifier,
    Title,
    Verbatim,
    fault,
)
from generator.model.roles import Refers
from generator.model.source import Citations

Signal = Literal["danger", "warning", "caution", "notice"]
SIGNALS: tuple[Signal, ...] = get_args(Signal)
"""From the worst down."""


class Phase(Entry):
    """A part of the day; its procedures stand under it, in order."""

    title: Title
    order: int
    help: Sentence = ""
    at_hand: bool = False
    """Its procedures are a tap away on every page, are numbered, not ticked, and no part of the day's progress."""
    ahead: bool = False
    """Its lists are worked through before the day that they are for: that is asked for, and leads back to none."""


class Supply(Entry):
    """Something to bring or to have at hand; `amount` is a quantity, where the plan tells how many."""

    title: Title
    group: GroupIdentifier
    amount: QuantityIdentifier | None = None
    note: Line = ""
    called: tuple[Verbatim, ...] = ()
    """Words by which steps name it: a procedure whose steps use one needs a supply that is called so."""


class Caution(Entry):
    """A hazard, and how it is avoided. The local code and licensed practice always decide."""

    signal: Signal
    hazard: Line
    avoid: Sentence
    source: Citations


class KeyPoint(Entry):
    """What makes or breaks a step, and why where that is not plain."""

    point: Line
    why: Sentence = ""
    plain: bool = False
    """Its reason is plain to everyone."""


def _as_key_point(value: object) -> object:
    return {"point": value} if isinstance(value, str) else value


class Step(Entry):
    """One action, verb first, on one row."""

    action: Line
    key_points: tuple[
        Annotated[KeyPoint, BeforeValidator(_as_key_point, json_schema_input_type=str | KeyPoint)], ...
    ] = ()
    reason: Sentence = ""
    timer: QuantityIdentifier | None = None
    """The quantity that a timer started from this row counts down."""
    timer_name: Title = ""
    """What is timed, as the timer is called; without it, the title of the quantity."""
    timer_end: Sentence = ""
    """What to do when the timer is over."""
    logged: ReadingIdentifier | None = None
    """The reading whose entry shows that the time was kept, where it is not one with this time as its limit."""
    unlogged: Verbatim = ""
    """Why the log needs no entry for this time."""
    number: QuantityIdentifier | None = None
    """The quantity whose value stands large at the row."""
    picture: PictureIdentifier | None = None
    only: dict[ChoiceIdentifier, tuple[Identifier, ...]] = {}
    """Choice id to options: the row is shown only where the plan has one of them."""
    one_motion: bool = False
    """Its orders are one motion of the hands or one look, and so stand on one row."""
    guards: tuple[Identifier, ...] = ()
    """The cautions of the procedure that it keeps from happening, when it is done as its words and key points say."""
    source: Citations

    @model_validator(mode="after")
    def _words_have_a_timer(self) -> Step:
        if (self.timer_name or self.timer_end) and not self.timer:
            raise fault("has `timer_name` or `timer_end` and no `timer`", "say which quantity is counted down")
        if (self.logged or self.unlogged) and not self.timer:
            raise fault("has `logged` or `unlogged` and no `timer`", "say which quantity is counted down")
        return self


class StopRule(Entry):
    """When the work stops, what is done first, and who is told."""

    when: Line
    act: Sentence
    tell: Line = ""
    source: Citations


class Cause(Entry):
    """One thing that may lie behind a fault, how to tell it from the others, and what then cures it."""

    because: Line
    check: Sentence
    remedy: Sentence


class Fault(Entry):
    """What is seen, why it happens, and what cures it."""

    sign: Line
    cause: Sentence
    remedy: Sentence
    causes: dict[Identifier, Cause] = {}
    """The causes one by one, the likeliest first, where a check tells them apart."""
    stop: Sentence = ""
    """When to stop trying."""
    readings: tuple[Annotated[Identifier, Refers("readings")], ...] = ()
    """Readings that, outside their limits, point here."""
    source: Citations


class Procedure(Entry):
    """A station or a job. Its parts have ids, never positions, so that records can name them."""

    title: Title
    verb: Title
    """The job in one or two words, for cards and buttons."""
    sought: Sought = ""
    phase: PhaseIdentifier
    order: int
    who: Line
    purpose: Sentence
    good: Sentence
    """What good work looks like here."""
    needs: tuple[SupplyIdentifier, ...] = ()
    targets: tuple[QuantityIdentifier, ...] = ()
    readings: tuple[ReadingIdentifier, ...] = ()
    """What is read, counted or noted at this station."""
    repeats: Round = ""
    """What one round is called where the steps are gone through again and again in a day."""
    when_needed: bool = False
    """Done only when something calls for it: listed among the others, and not offered as what comes next."""
    cautions: dict[Identifier, Caution] = {}
    steps: dict[Identifier, Step]
    stops: dict[Identifier, StopRule] = {}
    faults: dict[Identifier, Fault] = {}

    @property
    def pictures(self) -> list[str]:
        """Pictures that its steps show, each once, in order."""
        return list(dict.fromkeys(step.picture for step in self.steps.values() if step.picture))

    @model_validator(mode="after")
    def _has_steps(self) -> Procedure:
        if not self.steps:
            raise fault("has no steps", "write at least one under `steps`")
        return self
