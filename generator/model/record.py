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


class Remedy(Entry):
    """What to do about a reading, and what is done most often then, for one tap."""

    act: Sentence
    actions: dict[Identifier, Line] = {}


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
    whole: bool = False
    """Whether it counts things and so takes whole numbers only."""
    at_most: ReadingIdentifier | None = None
    """What its sum of a day can hardly exceed, where that was written down: people are asked before it does."""
    none_if_silent: bool = False
    """Whether nothing written down means that there was none, as with losses."""
    low: QuantityIdentifier | None = None
    high: QuantityIdentifier | None = None
    since: ReadingIdentifier | None = None
    """The entry with which the rhythm, and the time allowed, begin; for each lot its own, where it is read by lots."""
    until: tuple[ReadingIdentifier, ...] = ()
    """The entries that end the rhythm, whichever comes first."""
    within: QuantityIdentifier | None = None
    """The time allowed to come inside the limits."""
    rhythm: QuantityIdentifier | None = None
    """How often it is read."""
    curve: Curve | None = None
    too_low: Remedy | None = None
    too_high: Remedy | None = None
    too_slow: Remedy | None = None
    """For a reading that will not come to its upper limit in the time allowed, while there still is time."""
    reasons: dict[Identifier, Line] = {}
    """Why, for one tap, where it always has a reason."""
    own_words: Identifier | None = None
    """The reason that a person tells in words of their own; they are kept as a remark."""
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
        if self.rhythm and not (self.until or self.within):
            raise fault("has a `rhythm` that nothing ends", "name in `until` what ends it")
        if self.whole and not self.measure:
            raise fault("has `whole` and no `measure`", "say what it measures")
        if self.at_most and not self.adds_up:
            raise fault("has `at_most` and does not add up", "take it out, or write `adds_up: true`")
        if self.own_words and self.own_words not in self.reasons:
            raise fault(f"has no reason `{self.own_words}`, which `own_words` names", "name one of its `reasons`")
        if self.none_if_silent and not self.adds_up:
            raise fault("has `none_if_silent` and does not add up", "take it out, or write `adds_up: true`")
        if self.within and not (self.since and (self.low or self.high)):
            raise fault("has `within` but not `since` and a limit", "say since when, and what must be reached")
        return self

    @model_validator(mode="after")
    def _each_way_out_has_its_remedy(self) -> Logged:
        for side, limit, remedy in (("low", self.low, self.too_low), ("high", self.high, self.too_high)):
            if bool(limit) != bool(remedy):
                what = f"has one of `{side}` and `too_{side}`"
                raise fault(what, f"say in `too_{side}` what to do beyond that limit")
        if bool(self.curve and self.high and self.within) != bool(self.too_slow):
            what = "has one of `too_slow`, and `curve`, `high` and `within` by which it is foretold"
            raise fault(what, "say in `too_slow` what to do while there still is time")
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
