"""The part of JSON Schema that records are checked by: the first thing wrong, and with which key."""

from __future__ import annotations

import math
from typing import Any

import pytest

from generator.records.shape import Fault, fault_of

NOTE = {"type": "string", "minLength": 1, "maxLength": 3, "pattern": "^[a-z]+$"}
CLOCK = {"type": "number", "minimum": 0, "maximum": 24}
ENTRY = {
    "type": "object",
    "required": ["kind"],
    "properties": {"kind": {"enum": ["mark", "count"]}, "value": CLOCK, "note": NOTE},
    "additionalProperties": False,
    "allOf": [
        {
            "if": {"required": ["kind"], "properties": {"kind": {"const": "count"}}},
            "then": {"required": ["value"]},
        }
    ],
}


@pytest.mark.parametrize(
    ("value", "schema", "code"),
    [
        ("abc", NOTE, None),
        ("", NOTE, "empty"),
        ("", {"type": "string"}, None),
        ("abcd", NOTE, "too_long"),
        ("ab\n", NOTE, "bad_text"),
        ("AB", NOTE, "bad_text"),
        (0, CLOCK, None),
        (24, CLOCK, None),
        (12.5, CLOCK, None),
        (-0.1, CLOCK, "bad_number"),
        (24.1, CLOCK, "bad_number"),
        (math.nan, CLOCK, "bad_number"),
        (math.inf, {"type": "number"}, "bad_number"),
        (12.5, {"type": "integer"}, "wrong_type"),
        (12.0, {"type": "integer"}, None),
        (True, CLOCK, "wrong_type"),
        (None, NOTE, "wrong_type"),
        (1, {"const": True}, "not_listed"),
        ("x", {"enum": ["y"]}, "not_listed"),
        ([], {"type": ["object", "null"]}, "wrong_type"),
        (None, {"type": ["object", "null"]}, None),
    ],
)
def test_a_value_is_held_to_its_shape(value: Any, schema: dict[str, Any], code: str | None) -> None:
    assert fault_of(value, schema, "here") == (code and Fault(code, "here"))


@pytest.mark.parametrize(
    ("entry", "fault"),
    [
        ({"kind": "mark"}, None),
        ({"kind": "count", "value": 3}, None),
        ({}, Fault("missing", "kind")),
        ({"kind": "count"}, Fault("missing", "value")),
        ({"kind": "mark", "value": 99}, Fault("bad_number", "value")),
        ({"kind": "mark", "odd": 1}, Fault("unknown_key", "here")),
    ],
)
def test_an_entry_is_held_to_its_keys(entry: Any, fault: Fault | None) -> None:
    assert fault_of(entry, ENTRY, "here") == fault


def test_keys_of_anything_are_held_to_a_number_a_pattern_and_a_shape() -> None:
    schema = {
        "type": "object",
        "maxProperties": 2,
        "propertyNames": {"pattern": "^[a-z]+$"},
        "additionalProperties": {"type": "number"},
    }
    assert fault_of({"a": 1, "b": 2}, schema, "values") is None
    assert fault_of({"a": 1, "b": 2, "c": 3}, schema, "values") == Fault("too_many_keys", "values")
    assert fault_of({"A": 1}, schema, "values") == Fault("unknown_key", "values")
    assert fault_of({"a": "1"}, schema, "values") == Fault("wrong_type", "values")
