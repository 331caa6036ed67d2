"""The gettext catalogues that translators work in, kept in step with the content."""

from __future__ import annotations

import io
from collections.abc import Iterable
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
    for file in _catalogues_of(layer):
        Translation.of(file.stem, [layer])
        messages = [message for message in read_catalogue(file) if message.id]
        missing = [message for message in messages if message.fuzzy or not message.string]
        states.append(State(file, len(missing), len(messages)))
    return states


def bring_catalogues(library: Library, shared: Path, farm: Path) -> Path:
    """Writes the template and takes new and changed messages into each language; returns the template's path.

    A farm's own catalogue is spared what the shared one of its language says already. Raises ProblemsFound for a broken
    catalogue, and then nothing is written.
    """
    files = [file for layer in (shared, farm) for file in _catalogues_of(layer)]
    there = [(file, read_catalogue(file), _said_below(file, shared)) for file in files]
    put(shared / TRANSLATIONS / TEMPLATE, template(library).encode())
    for file, catalog, said in there:
        wanted = extract(library)
        for english in said:
            if english not in catalog:
                wanted.delete(english)
        catalog.update(wanted)
        written = io.BytesIO()
        write_po(written, catalog, width=100, omit_header=True)
        put(file, HEADER.encode() + written.getvalue())
    return shared / TRANSLATIONS / TEMPLATE


def _catalogues_of(layer: Path) -> list[Path]:
    return sorted((layer / TRANSLATIONS).glob("*.po"))


def _said_below(file: Path, shared: Path) -> Iterable[str]:
    """What the shared catalogue of its language translates, for a farm's own."""
    below = shared / TRANSLATIONS / file.name
    return Translation.of(file.stem, [shared]).texts if below.is_file() and below != file else ()
