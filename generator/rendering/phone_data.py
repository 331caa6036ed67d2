"""What programs on the phone read: words, and the formulas printed for them."""

from __future__ import annotations

import json

from generator.records.phone_catalogue import record_programs
from generator.telling.edition import Edition
from generator.telling.words import PHONE, Words
from generator.units.showing import WORDS


def phone_data(edition: Edition, words: Words) -> dict[str, str]:
    """The files below `phone/` that differ from edition to edition."""
    said = {
        "words": words.beginning(PHONE),
        "names": _names(edition),
        "options": _options(edition),
        "chosen": {name: edition.settings[name] for name in edition.library.choices},
        "first": edition.first,
        "symbols": _symbols(edition),
    }
    lines = [f"export const {name} = {_written(value)};\n" for name, value in said.items()]
    made = {"phone/words.js": "".join(lines), "phone/formulas.js": edition.workbook.javascript()}
    return made | record_programs(edition)


def _names(edition: Edition) -> dict[str, str]:
    """Titles of members of sets, which some quantities have for a value."""
    return {name: edition.translate(title) for name, title in edition.library.member_titles.items()}


def _options(edition: Edition) -> dict[str, dict[str, str]]:
    """Titles of options by choice."""
    return {
        name: {option: edition.translate(entry.title) for option, entry in choice.options.items()}
        for name, choice in edition.library.choices.items()
    }


def _symbols(edition: Edition) -> dict[str, str]:
    """Symbols of units and words of shown values that read differently in the edition's language."""
    units = edition.library.units.values()
    english = {*WORDS, *(text for unit in units for text in (unit.symbol, unit.plural, unit.pattern) if text)}
    return {text: said for text in sorted(english) if (said := edition.translate(text)) != text}


def _written(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
