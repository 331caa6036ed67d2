"""The base of every entry, and the kinds of text a person may write in one."""

from __future__ import annotations

from typing import Annotated

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, StringConstraints


class Entry(BaseModel):
    """Frozen, and strict about unknown keys, so that a slip of the pen is always reported."""

    model_config = ConfigDict(extra="forbid", frozen=True, str_strip_whitespace=True)


def _without_hidden_characters(text: str) -> str:
    hidden = [character for character in text if not character.isprintable() and character != "\n"]
    if hidden:
        raise ValueError(f"hidden character U+{ord(hidden[0]):04X}")
    return text


def _number_as_text(value: object) -> object:
    return str(value) if isinstance(value, int | float) and not isinstance(value, bool) else value


_Visible = AfterValidator(_without_hidden_characters)

Identifier = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9_]*$", max_length=60)]
SourceIdentifier = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9-]*$", max_length=60)]
Title = Annotated[str, StringConstraints(min_length=1, max_length=48), _Visible]
Line = Annotated[str, StringConstraints(min_length=1, max_length=100), _Visible]
Sentence = Annotated[str, StringConstraints(min_length=1, max_length=240), _Visible]
Prose = Annotated[str, StringConstraints(min_length=1, max_length=1200), _Visible]
UnitText = Annotated[str, StringConstraints(min_length=1, max_length=30)]
ValueText = Annotated[str, BeforeValidator(_number_as_text), StringConstraints(min_length=1, max_length=40)]
FormulaText = Annotated[str, BeforeValidator(_number_as_text), StringConstraints(min_length=1, max_length=2000)]
