"""Every text of an entry says in its type what it is for."""

import typing
from pathlib import Path

import pytest
from pydantic import BaseModel

from generator.model import library as model
from generator.model.leaves import leaves
from generator.model.library import Library
from generator.model.roles import Formula, Human, Refers
from generator.reading import read_library

ROOT = Path(__file__).parents[1] / "other_trade"
BARE = {("Unit", "definition"), ("Source", "read_on"), ("Farm", "languages"), ("Farm", "site_address")}
"""Fields of bare text: not shown as they stand, and short by nature."""


def models(annotation: object, found: set[type[BaseModel]]) -> set[type[BaseModel]]:
    for part in typing.get_args(annotation) or [annotation]:
        if isinstance(part, type) and issubclass(part, BaseModel) and part not in found:
            found.add(part)
            for hint in typing.get_type_hints(part).values():
                models(hint, found)
        elif typing.get_args(part):
            models(part, found)
    return found


def is_bare(annotation: object) -> bool:
    """Whether text is allowed without one of the types that limit it and say what it is for."""
    if typing.get_origin(annotation) in (typing.Annotated, typing.Literal):
        return False
    return annotation is str or any(is_bare(part) for part in typing.get_args(annotation))


@pytest.mark.parametrize("entry", sorted(models(Library, set()) - {Library}, key=lambda entry: entry.__name__))
def test_each_text_is_limited_and_says_what_it_is_for(entry: type[BaseModel]) -> None:
    hints = typing.get_type_hints(entry, include_extras=True)
    bare = {(entry.__name__, name) for name in entry.model_fields if is_bare(hints[name])}
    assert bare <= BARE


def test_leaves_of_the_other_trade() -> None:
    found = list(leaves(read_library(ROOT / "shared", ROOT / "bakery").library, Human, Refers, Formula))
    told = {(leaf.kind, leaf.name, leaf.path): leaf for leaf in found if not leaf.is_key}
    pour = told["procedures", "mix_the_dough", ("steps", "pour", "key_points", 0, "why")]
    assert (pour.text, pour.role) == ("It never gets wet later.", Human())
    assert told["quantities", "water_temperature", ("require", 0, "that")].role == Formula()
    assert told["quantities", "water_temperature", ("require", 0, "input")].role == Refers("quantities", "choices")
    assert told["supplies", "flour", ("amount",)].text == "flour_mass"
    assert told["choices", "flour_kind", ("options", "wholemeal", "statements", "fibre", "says")].role == Human(
        figures=True
    )
    keys = {(leaf.name, leaf.text) for leaf in found if leaf.is_key}
    assert {("flour_kind", "water_share"), ("saturday", "loaves"), ("bake_the_loaves", "flour_kind")} <= keys


def test_entries_are_frozen_and_closed() -> None:
    for entry in models(Library, set()) | {Library}:
        assert entry.model_config["frozen"], entry
        assert entry.model_config["extra"] == "forbid", entry
    assert model.Library.model_fields["units"].default == {}
