"""The base of every entry, and the kinds of text a person may write in one."""

from __future__ import annotations

from typing import Annotated

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, StringConstraints
from pydantic_core import PydanticCustomError

from generator.model.roles import Formula, Human, Refers


class Entry(BaseModel):
    """Frozen, and strict about unknown keys and types, so that a slip of the pen is always reported."""

    model_config = ConfigDict(
        extra="forbid", frozen=True, strict=True, str_strip_whitespace=True, use_attribute_docstrings=True
    )


def fault(what: str, hint: str) -> PydanticCustomError:
    """What a validator raises when fields do not fit together: a fault and its remedy, as a writer reads them."""
    return PydanticCustomError("fault", "{what}", {"what": what, "hint": hint})


def _without_hidden_characters(text: str) -> str:
    for character in text:
        if not character.isprintable() and character != "\n":
            raise fault(f"has the hidden character U+{ord(character):04X}", "delete it and type the text again")
    return text


def _number_as_text(value: object) -> object:
    return str(value) if isinstance(value, int | float) and not isinstance(value, bool) else value


Visible = AfterValidator(_without_hidden_characters)
_Number = BeforeValidator(_number_as_text, json_schema_input_type=str | int | float)

Identifier = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9_]*$", max_length=60)]
SourceIdentifier = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9-]*$", max_length=60), Refers("sources")]

Title = Annotated[str, StringConstraints(min_length=1, max_length=48), Visible, Human()]
Round = Annotated[str, StringConstraints(min_length=1, max_length=24), Visible, Human()]
"""Short, for a number follows it."""
Symbol = Annotated[str, StringConstraints(max_length=30), Visible, Human()]
"""What stands behind a number; may be empty."""
Line = Annotated[str, StringConstraints(min_length=1, max_length=100), Visible, Human()]
Sentence = Annotated[str, StringConstraints(min_length=1, max_length=240), Visible, Human()]
Prose = Annotated[str, StringConstraints(min_length=1, max_length=1200), Visible, Human()]
Facts = Annotated[str, StringConstraints(min_length=1, max_length=1200), Visible, Human(figures=True)]
"""Prose that reports what a source says, and so may give figures as they stand there."""
Sought = Annotated[str, StringConstraints(max_length=120), Visible, Human(figures=True)]
"""Other words by which people look for a thing, as they come to mind; nobody reads them."""
Phrase = Annotated[str, StringConstraints(min_length=1, max_length=240), Visible, Human(figures=True, names=True)]
"""A phrase of the interface; what stands in braces is named by the page that uses it."""
Verbatim = Annotated[str, StringConstraints(min_length=1, max_length=240), Visible]
"""A name, a title or an address: the same in every language."""

UnitText = Annotated[str, StringConstraints(min_length=1, max_length=30), Refers("units")]
ValueText = Annotated[str, _Number, StringConstraints(min_length=1, max_length=40)]
FormulaText = Annotated[str, _Number, StringConstraints(min_length=1, max_length=2000), Formula()]

QuantityIdentifier = Annotated[Identifier, Refers("quantities")]
InputIdentifier = Annotated[Identifier, Refers("quantities", "choices")]
ChoiceIdentifier = Annotated[Identifier, Refers("choices")]
MeasureIdentifier = Annotated[Identifier, Refers("measures")]
GroupIdentifier = Annotated[Identifier, Refers("groups")]
SetIdentifier = Annotated[Identifier, Refers("sets")]
PhaseIdentifier = Annotated[Identifier, Refers("phases")]
SupplyIdentifier = Annotated[Identifier, Refers("supplies")]
PictureIdentifier = Annotated[Identifier, Refers("pictures")]
PlanIdentifier = Annotated[Identifier, Refers("plans")]
ReadingIdentifier = Annotated[Identifier, Refers("readings")]
ProcedureIdentifier = Annotated[Identifier, Refers("procedures")]
