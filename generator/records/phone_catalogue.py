"""What the phone's record programs read: the schema, and all that can be read, counted or noted."""

from __future__ import annotations

import json
from collections.abc import Collection
from typing import Any

from generator.computing.phone_formulas import MADE, RUNTIME
from generator.formula import names, to_javascript
from generator.model.record import Logged, Remedy
from generator.records.formulas import link_formulas
from generator.records.shape import Schema, record_schema
from generator.telling.edition import Edition

_TOLD = ("$schema", "title", "description")


def record_programs(edition: Edition) -> dict[str, str]:
    """`phone/record_format.js`, and in the edition's language `phone/readings.js` and `phone/tallies.js`."""
    named = {name: _item(edition, item) for name, item in edition.library.readings.items()}
    measures = _measures(edition, {item.measure for item in edition.library.readings.values()})
    format_lines = f"export const format = {_written(_bare(record_schema()))};\n"
    lines = f"export const readings = {_written(named)};\nexport const readingMeasures = {_written(measures)};\n"
    return {"phone/record_format.js": format_lines, "phone/readings.js": lines, "phone/tallies.js": _tallies(edition)}


def _tallies(edition: Edition) -> str:
    """What a day comes to, with the formulas printed for phones."""
    library, workbook = edition.library, edition.workbook
    formulas, _ = link_formulas(workbook)
    lines = []
    for name, tree in sorted(formulas.tallies.items(), key=lambda each: library.tallies[each[0]].order):
        tally = library.tallies[name]
        about = {"title": edition.translate(tally.title), "measure": tally.measure, "plan": tally.plan}
        told = _written({**about, "uses": list(names(tree))})
        lines.append(f"  {name}: {{...{told}, formula: (v) => {to_javascript(tree, workbook.book)}}},\n")
    measures = _written(_measures(edition, {tally.measure for tally in library.tallies.values()}))
    head = f'{MADE}{RUNTIME}import {{ functions, tables }} from "./formulas.js";\n'
    return f"{head}export const tallies = {{\n{''.join(lines)}}};\nexport const tallyMeasures = {measures};\n"


def _measures(edition: Edition, used: Collection[str | None]) -> dict[str, Any]:
    return {
        name: measure.model_dump(include={"unit", "point", "form", "us", "metric"})
        for name, measure in edition.library.measures.items()
        if name in used
    }


def _item(edition: Edition, item: Logged) -> dict[str, Any]:
    """One reading: its numbers in SI, its sentences translated with the places for quantities kept."""
    say = edition.translate
    told: dict[str, Any] = {
        "title": say(item.title),
        "help": say(item.help) if item.help else "",
        "named": say(item.named) if item.named else "",
        "one": say(item.one) if item.one else "",
        **{key: _remedy(edition, getattr(item, key)) for key in ("too_low", "too_high", "too_slow")},
        "reasons": {name: say(line) for name, line in item.reasons.items()},
        "ahead": edition.library.phases[item.phase].ahead,
        "curve": item.curve.model_dump(exclude_none=True) if item.curve else None,
        **item.model_dump(include={"phase", "order", "measure", "own_words", "per_lot"}),
        **item.model_dump(include={"adds_up", "whole", "at_most", "none_if_silent"}),
        **item.model_dump(include={"low", "high", "since", "within", "rhythm"}),
        "until": list(item.until) or None,
    }
    if item.measure and item.range:
        measure = edition.library.measures[item.measure]
        told["range"] = [edition.book.read(text, measure) for text in item.range]
        told["step"] = edition.book.read(item.step, measure, difference=True) if item.step else None
    return {key: value for key, value in told.items() if value not in (None, "", False, {})}


def _remedy(edition: Edition, remedy: Remedy | None) -> dict[str, Any] | None:
    """What to do and what is done most often, translated."""
    if remedy is None:
        return None
    actions = {name: edition.translate(line) for name, line in remedy.actions.items()}
    return {"act": edition.translate(remedy.act), "actions": actions}


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
    return json.dumps(value, ensure_ascii=True, separators=(",", ":"))
