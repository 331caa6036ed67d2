"""The gettext catalogues that translators work in, kept in step with the content."""

from __future__ import annotations

import io
from dataclasses import dataclass
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

from generator.model.library import Library
from generator.reading.files import TRANSLATIONS
from generator.reading.messages import extract, template
from generator.reading.translation import Translation

TEMPLATE = "messages.pot"
HEADER = 'msgid ""\nmsgstr "Content-Type: text/plain; charset=UTF-8\\n"\n\n'
"""Without dates and names, so that the same words give the same file."""


@dataclass(frozen=True)
class State:
    """How far the catalogue of one language is."""

    file: Path
    missing: int
    """Messages without a translation, or with one that a person must look at again."""
    all: int


def catalogues(layer: Path) -> list[State]:
    """The state of each language of a layer of content against its catalogue. Raises ProblemsFound for a broken one."""
    states = []
    for file in sorted((layer / TRANSLATIONS).glob("*.po")):
        Translation.of(file.stem, [layer])
        messages = [message for message in _read(file) if message.id]
        missing = [message for message in messages if message.fuzzy or not message.string]
        states.append(State(file, len(missing), len(messages)))
    return states


def bring_catalogues(library: Library, layer: Path) -> Path:
    """Writes the template and takes new and changed messages into each language; returns the template's path."""
    file = layer / TRANSLATIONS / TEMPLATE
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(template(library), encoding="utf-8", newline="\n")
    wanted = extract(library)
    for language in sorted(file.parent.glob("*.po")):
        catalog = _read(language)
        catalog.update(wanted)
        written = io.BytesIO()
        write_po(written, catalog, width=100, omit_header=True)
        language.write_text(HEADER + written.getvalue().decode("utf-8"), encoding="utf-8", newline="\n")
    return file


def _read(file: Path) -> Catalog:
    return read_po(io.StringIO(file.read_text(encoding="utf-8-sig")), locale=None)
