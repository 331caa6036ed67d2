"""What programs on the phone read: words, and the formulas printed for them."""

from __future__ import annotations

import json

from generator.telling.edition import Edition
from generator.telling.words import PHONE, Words
from generator.units.showing import WORDS


def phone_data(edition: Edition, words: Words) -> dict[str, str]:
    """The files below `phone/` that differ from edition to edition."""
    translate = edition.translate
    library = edition.library
    names = {
        name: translate(entry.title)
        for whole in (*library.sets.values(), *library.choices.values())
        for name, entry in (whole.members if hasattr(whole, "members") else whole.options).items()
    }
    chosen = {name: edition.settings[name] for name in library.choices}
    said = {"words": words.beginning(PHONE), "names": names, "chosen": chosen, "first": edition.first, "symbols": _symbols(edition)}
    lines = [f"export const {name} = {_written(value)};\n" for name, value in said.items()]
    return {"phone/words.js": "".join(lines), "phone/formulas.js": edition.workbook.javascript()}


def _symbols(edition: Edition) -> dict[str, str]:
    """Symbols of units and words of shown values that read differently in the edition's language."""
    units = edition.library.units.values()
    english = {*WORDS, *(text for unit in units for text in (unit.symbol, unit.plural, unit.pattern) if text)}
    return {text: said for text in sorted(english) if (said := edition.translate(text)) != text}


def _written(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
