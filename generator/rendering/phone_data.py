"""What programs on the phone read: words, and the formulas printed for them."""

from __future__ import annotations

import json

from generator.rendering.edition import Edition
from generator.rendering.words import PHONE, Words


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
    said = {"words": words.beginning(PHONE), "names": names, "chosen": chosen, "first": edition.first}
    lines = [f"export const {name} = {_written(value)};\n" for name, value in said.items()]
    return {"phone/words.js": "".join(lines), "phone/formulas.js": edition.workbook.javascript()}


def _written(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
