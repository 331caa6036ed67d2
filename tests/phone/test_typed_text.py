"""What people type or paste goes into a record as every other phone takes it in."""

from __future__ import annotations

import json
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.pipeline.order import GENERATOR
from tests.phone.conftest import Ask, machine

SCHEMA = json.loads((GENERATOR / "records/day_record.schema.json").read_text("utf-8"))
ENTRY = SCHEMA["$defs"]["entry"]["properties"]
FIELDS = {name: ENTRY[name]["maxLength"] for name in ("who", "name", "lot", "text")}
TROUBLE = st.sampled_from("\u200e\u200f\u202e\ufeff\u2028\u0000\t\n 😀é")


@pytest.fixture(scope="module")
def tidy() -> Ask:
    return machine("typed_text.js")


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("Row\u200e 3", "Row 3"),
        ("  two\n\n lines ", "two lines"),
        ("\u202eneB", "neB"),
        ("\u200e \ufeff", ""),
        ("Ana/Ben", "Ana/Ben"),
    ],
)
def test_hidden_characters_and_stray_spaces_go(tidy: Ask, typed: str, kept: str) -> None:
    assert tidy("tidy(typed, 60)", typed=typed) == kept


def test_a_sign_is_not_cut_in_two(tidy: Ask) -> None:
    """Half of one would be refused as no text at all; a record's schema counts whole ones, as JSON Schema says."""
    assert tidy("tidy(typed, 3)", typed="ab😀cd") == "ab😀"
    assert tidy("tidy(typed, 3)", typed="ab cd") == "ab"


@pytest.mark.parametrize("field", FIELDS)
@given(typed=st.text(TROUBLE | st.characters(), max_size=120))
def test_every_phone_takes_it(tidy: Ask, field: str, typed: str) -> None:
    kept = tidy("tidy(typed, most)", typed=typed, most=FIELDS[field])
    assert len(kept) <= FIELDS[field]
    assert re.search(ENTRY[field]["pattern"], kept)
