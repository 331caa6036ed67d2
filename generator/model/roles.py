"""What a piece of content is for, said once beside its type; checks, translation and editors read it there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pydantic import GetJsonSchemaHandler
    from pydantic.json_schema import JsonSchemaValue
    from pydantic_core import CoreSchema


@dataclass(frozen=True)
class Human:
    """Read by people and translated. `{id}` in it stands for a quantity's value.

    `figures`: may give numbers as its source gives them. `names`: what stands in braces is not a quantity.
    """

    figures: bool = False
    names: bool = False


@dataclass(frozen=True)
class Formula:
    """Text in the formula language."""


@dataclass(frozen=True, init=False)
class Refers:
    """The id of an entry of one of `kinds`."""

    kinds: tuple[str, ...]

    def __init__(self, *kinds: str) -> None:
        object.__setattr__(self, "kinds", kinds)

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        """Leaves the kinds in the JSON Schema, where the ids of a short list are filled in later."""
        return {**handler(core), "refers": list(self.kinds)}


Role = Human | Formula | Refers
