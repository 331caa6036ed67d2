"""The part of JSON Schema that the record's own schema is written in. `record_check.js` is the same, line for line."""

from __future__ import annotations

import json
import math
import re
from functools import cache
from importlib.resources import files
from typing import Any, NamedTuple

Schema = dict[str, Any]
SCHEMA_FILE = "day_record.schema.json"


class Fault(NamedTuple):
    """What is wrong, as the end of the id of the word `phone_record_fault_<code>`, and with which key."""

    code: str
    at: str


@cache
def record_schema() -> Schema:
    """The schema of a record file."""
    schema: Schema = json.loads(files(__package__).joinpath(SCHEMA_FILE).read_text("utf-8"))
    return schema


def fault_of(value: Any, schema: Schema, at: str) -> Fault | None:  # noqa: ANN401 - JSON
    """The first way in which a value breaks the schema."""
    kind = kind_of(value)
    if "const" in schema and (value != schema["const"] or kind_of(schema["const"]) != kind):
        return Fault("not_listed", at)
    if "enum" in schema and not any(value == each and kind_of(each) == kind for each in schema["enum"]):
        return Fault("not_listed", at)
    types = schema.get("type", kind)
    allowed = types if isinstance(types, list) else [types]
    if kind not in allowed and not (kind == "integer" and "number" in allowed):
        return Fault("wrong_type", at)
    if kind == "string":
        return _fault_of_text(value, schema, at)
    if kind in ("integer", "number"):
        return _fault_of_number(value, schema, at)
    return _fault_of_object(value, schema, at) if kind == "object" else None


def kind_of(value: object) -> str:
    """The JSON type of a value; a number without a fraction is an integer."""
    if isinstance(value, bool) or value is None:
        return "null" if value is None else "boolean"
    if isinstance(value, int | float):
        return "integer" if math.isfinite(value) and value == int(value) else "number"
    return "string" if isinstance(value, str) else "array" if isinstance(value, list) else "object"


def _fault_of_text(text: str, schema: Schema, at: str) -> Fault | None:
    if len(text) > schema.get("maxLength", math.inf):
        return Fault("too_long", at)
    if len(text) < schema.get("minLength", 0):
        return Fault("empty", at)
    return None if _fits(text, schema.get("pattern")) else Fault("bad_text", at)


def _fault_of_number(number: float, schema: Schema, at: str) -> Fault | None:
    fits = schema.get("minimum", -math.inf) <= number <= schema.get("maximum", math.inf)
    return None if fits and math.isfinite(number) else Fault("bad_number", at)


def _fault_of_object(found: dict[str, Any], schema: Schema, at: str) -> Fault | None:
    for key in schema.get("required", ()):
        if key not in found:
            return Fault("missing", key)
    if len(found) > schema.get("maxProperties", math.inf):
        return Fault("too_many_keys", at)
    for key, value in found.items():
        if fault := _fault_of_key(key, value, schema, at):
            return fault
    for part in schema.get("allOf", ()):
        if _applies(found, part["if"]) and (fault := fault_of(found, part["then"], at)):
            return fault
    return None


def _applies(found: dict[str, Any], condition: Schema) -> bool:
    """Whether the condition of a part holds, which names keys that are there and values that they have."""
    if any(key not in found for key in condition.get("required", ())):
        return False
    return all(found.get(key) == part["const"] for key, part in condition.get("properties", {}).items())


def _fault_of_key(key: str, value: object, schema: Schema, at: str) -> Fault | None:
    if key in schema.get("properties", {}):
        return fault_of(value, schema["properties"][key], key)
    if not _fits(key, schema.get("propertyNames", {}).get("pattern")):
        return Fault("unknown_key", at)
    more = schema.get("additionalProperties", True)
    if more is False:
        return Fault("unknown_key", at)
    return fault_of(value, more, at) if isinstance(more, dict) else None


def _fits(text: str, pattern: str | None) -> bool:
    """Patterns are anchored; `$` would let a line end pass in Python and not on the phone."""
    return pattern is None or re.fullmatch(pattern.removeprefix("^").removesuffix("$"), text) is not None
