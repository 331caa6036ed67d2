"""What the phone's record programs read: the schema, and all that can be read, counted or noted."""

from __future__ import annotations

import json
from typing import Any

from generator.model.record import Logged
from generator.records.shape import Schema, record_schema
from generator.telling.edition import Edition

_TOLD = ("$schema", "title", "description")


def record_programs(edition: Edition) -> dict[str, str]:
    """`phone/record_format.js` and `phone/readings.js`, the second in the edition's language."""
    named = {name: _item(edition, item) for name, item in edition.library.readings.items()}
    used = {item.measure for item in edition.library.readings.values() if item.measure}
    measures = {
        name: measure.model_dump(include={"unit", "point", "form", "us", "metric"})
        for name, measure in edition.library.measures.items()
        if name in used
    }
    format_lines = f"export const format = {_written(_bare(record_schema()))};\n"
    lines = f"export const readings = {_written(named)};\nexport const readingMeasures = {_written(measures)};\n"
    return {"phone/record_format.js": format_lines, "phone/readings.js": lines}


def _item(edition: Edition, item: Logged) -> dict[str, Any]:
    """One reading: its numbers in SI, its sentences translated with the places for quantities kept."""
    say = edition.translate
    told: dict[str, Any] = {
        "title": say(item.title),
        "help": say(item.help) if item.help else "",
        "named": say(item.named) if item.named else "",
        "act": say(item.act) if item.act else "",
        "actions": {name: say(line) for name, line in item.actions.items()},
        "reasons": {name: say(line) for name, line in item.reasons.items()},
        "curve": item.curve.model_dump(exclude_none=True) if item.curve else None,
        **item.model_dump(include={"phase", "order", "measure", "adds_up", "none_if_silent", "per_lot"}),
        **item.model_dump(include={"low", "high", "since", "until", "within", "rhythm"}),
    }
    if item.measure and item.range:
        measure = edition.library.measures[item.measure]
        told["range"] = [edition.book.read(text, measure) for text in item.range]
        told["step"] = edition.book.read(item.step, measure, difference=True) if item.step else None
    return {key: value for key, value in told.items() if value not in (None, "", False, {})}


def _bare(schema: Schema) -> Schema:
    """The schema without what only people read in it."""

    def bare(part: Any) -> Any:  # noqa: ANN401 - JSON
        if isinstance(part, list):
            return [bare(each) for each in part]
        if not isinstance(part, dict):
            return part
        return {key: bare(value) for key, value in part.items() if key not in _TOLD or not isinstance(value, str)}

    found: Schema = bare(schema)
    return found


def _written(value: object) -> str:
    return json.dumps(value, ensure_ascii=True, sort_keys=True, separators=(",", ":"))
