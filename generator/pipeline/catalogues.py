"""The gettext catalogues that translators work in, kept in step with the content."""

from __future__ import annotations

import io
from dataclasses import dataclass
from pathlib import Path

from babel.messages.pofile import write_po

from generator.model.library import Library
from generator.reading.catalogue import read_catalogue
from generator.reading.files import TRANSLATIONS
from generator.reading.messages import HEADER, extract, template
from generator.reading.putting import put
from generator.reading.translation import Translation

TEMPLATE = "messages.pot"


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
        messages = [message for message in read_catalogue(file) if message.id]
        missing = [message for message in messages if message.fuzzy or not message.string]
        states.append(State(file, len(missing), len(messages)))
    return states


def bring_catalogues(library: Library, layer: Path) -> Path:
    """Writes the template and takes new and changed messages into each language; returns the template's path.

    Raises ProblemsFound for a broken catalogue, and then nothing is written.
    """
    folder, wanted = layer / TRANSLATIONS, extract(library)
    there = {file: read_catalogue(file) for file in sorted(folder.glob("*.po"))}
    put(folder / TEMPLATE, template(library).encode())
    for file, catalog in there.items():
        catalog.update(wanted)
        written = io.BytesIO()
        write_po(written, catalog, width=100, omit_header=True)
        put(file, HEADER.encode() + written.getvalue())
    return folder / TEMPLATE
