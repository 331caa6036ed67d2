"""Everything that has a value: inputs, constants and results, and what formulas are made of."""

from __future__ import annotations

from pydantic import model_validator

from generator.model.entry import (
    Entry,
    Facts,
    FormulaText,
    GroupIdentifier,
    InputIdentifier,
    Line,
    MeasureIdentifier,
    Prose,
    Sentence,
    SetIdentifier,
    Sought,
    Title,
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
    sought: Sought = ""
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
    doubt: ValueText | None = None
    """How far the true value may lie to either side: an amount, or a share such as `10 percent of it`."""
    how_sure: bool = False
    """A result that is shown with how far the doubts of what it rests on move it."""
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
        if self.doubt is not None and self.formula is not None:
            raise fault("has a `doubt` and is computed", "give the doubt to what it is computed from")
        if self.how_sure and self.formula is None:
            raise fault("has `how_sure` and is not computed", "take it out: what is given has its own `doubt`")
        if self.require and self.formula is None:
            raise fault("has `require` without a `formula`", "move it to a quantity that is computed from this one")
        return self


class Group(Entry):
    """A heading under which quantities stand, in `order`."""

    title: Title
    order: int
    help: Line = ""
