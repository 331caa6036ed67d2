"""What is written down while the work goes on, what it adds up to, and what the next plan learns from it."""

from __future__ import annotations

from pydantic import model_validator

from generator.model.entry import (
    Entry,
    Facts,
    FormulaText,
    Identifier,
    InputIdentifier,
    Line,
    MeasureIdentifier,
    PhaseIdentifier,
    QuantityIdentifier,
    ReadingIdentifier,
    Sentence,
    Title,
    ValueText,
    fault,
)
from generator.model.source import Citations


class Curve(Entry):
    """What a reading nears ever more slowly: the last reading of `toward`, or else the quantity `otherwise`."""

    toward: ReadingIdentifier | None = None
    otherwise: QuantityIdentifier


class Logged(Entry):
    """A thing to read, count or note. Without a `measure` only its time counts."""

    title: Title
    phase: PhaseIdentifier
    order: int
    help: Sentence = ""
    measure: MeasureIdentifier | None = None
    range: tuple[ValueText, ValueText] | None = None
    """What lies outside cannot be: a slip of the finger, or a broken file."""
    step: ValueText | None = None
    """What one tap on a stepper adds."""
    adds_up: bool = False
    """Whether the values of a day are summed, as counts are."""
    none_if_silent: bool = False
    """Whether nothing written down means that there was none, as with losses."""
    low: QuantityIdentifier | None = None
    high: QuantityIdentifier | None = None
    since: ReadingIdentifier | None = None
    """The entry with which the rhythm, and the time allowed, begin; for each lot its own, where it is read by lots."""
    until: ReadingIdentifier | None = None
    """The entry that ends the rhythm."""
    within: QuantityIdentifier | None = None
    """The time allowed to come inside the limits."""
    rhythm: QuantityIdentifier | None = None
    """How often it is read."""
    curve: Curve | None = None
    act: Sentence = ""
    """What to do when it lies outside its limits."""
    actions: dict[Identifier, Line] = {}
    """What is done most often then, for one tap."""
    reasons: dict[Identifier, Line] = {}
    """Why, for one tap, where it always has a reason."""
    per_lot: bool = False
    named: Title = ""
    """What one asks for the name of the thing read; empty where there is but one."""
    one: Title = ""
    """What stands before that name, as in `Box 1`."""
    source: Citations

    @model_validator(mode="after")
    def _parts_fit(self) -> Logged:
        if (self.measure is None) != (self.range is None):
            raise fault("has one of `measure` and `range`", "write both, or neither where only the time counts")
        if self.measure is None and (self.low or self.high or self.adds_up or self.curve or self.step):
            raise fault("has limits, `adds_up`, `curve` or `step` and no `measure`", "say what it measures")
        if bool(self.low or self.high) != bool(self.act):
            raise fault("has limits or `act` without the other", "say what to do outside the limits, in `act`")
        if self.none_if_silent and not self.adds_up:
            raise fault("has `none_if_silent` and does not add up", "take it out, or write `adds_up: true`")
        if self.within and not (self.since and (self.low or self.high)):
            raise fault("has `within` but not `since` and a limit", "say since when, and what must be reached")
        return self


class Tally(Entry):
    """What the readings of a day come to. In the formula `<reading>_total` and its like stand for what was read."""

    title: Title
    order: int
    measure: MeasureIdentifier
    formula: FormulaText
    plan: QuantityIdentifier | None = None
    """What the plan had for it."""
    yearly: bool = False
    """Whether the days of a calendar year are summed."""
    limit: QuantityIdentifier | None = None
    """The most that a year may come to; nothing or nought means no limit."""
    source: Citations

    @model_validator(mode="after")
    def _limit_is_yearly(self) -> Tally:
        if self.limit and not self.yearly:
            raise fault("has a `limit` and is not `yearly`", "write `yearly: true`, or take the limit out")
        return self


class Lesson(Entry):
    """How an input is learned from a day: `formula` is what was observed, of the input itself or of `by`.

    With `by`, the input is found at which the plan, with `given` in it, computes what was observed.
    """

    title: Title
    input: QuantityIdentifier
    formula: FormulaText
    by: QuantityIdentifier | None = None
    given: dict[InputIdentifier, FormulaText] = {}
    """Inputs that were read on the day, and so are known better than planned."""
    accuracy: Facts
    """How far to trust it."""
    source: Citations
