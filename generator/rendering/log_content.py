"""What programs about the log read besides the readings themselves; pages without readings do without it."""

from __future__ import annotations

import hashlib
import json

from generator.rendering.gathering import supplies_by_group
from generator.telling.edition import Edition
from generator.telling.words import Words

FILE = "phone/log_content.js"
MARK = "logging_"
"""Words whose ids begin so are sent to these programs."""
_LENGTH_OF_VERSION = 10


def log_content(edition: Edition, words: Words) -> dict[str, str]:
    """The file by its path."""
    library = edition.library
    said = {
        "words": words.beginning(MARK),
        "people": list(library.this_farm.crew),
        "farm": library.this_farm.name,
        "lists": _lists(edition, words),
        "version": _version(edition),
    }
    return {FILE: "".join(f"export const {name} = {_written(value)};\n" for name, value in said.items())}


def _lists(edition: Edition, words: Words) -> dict[str, str]:
    """The title of every list that is ticked, by the name under which its page keeps the ticks."""
    library, say = edition.library, edition.translate
    found = {name: say(procedure.title) for name, procedure in library.procedures.items()}
    if library.supplies:
        bring = words("title_bring")
        found |= {f"bring_{name}": f"{bring}: {say(group.title)}" for name, group, _ in supplies_by_group(edition)}
        found["shop"] = words("title_shop")
    return found


def _version(edition: Edition) -> str:
    """Names the formulas and the farm's plan, so that a record says which ones it was made with."""
    return hashlib.sha256(edition.workbook.javascript().encode()).hexdigest()[:_LENGTH_OF_VERSION]


def _written(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
