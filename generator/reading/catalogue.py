"""One gettext catalogue, refused where it could not be what the translator meant."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from itertools import islice
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import PoFileError, read_po

from generator.problems import Place, Problem, ProblemsFound, stop_at
from generator.reading.files import shown_path
from generator.reading.text import read_text

_WHOLE = re.compile(r'(?:msg(?:ctxt|id|str) +)?"(?:[^"\\]|\\[\\trn"])*"')
"""A line with a text; Babel would cut a letter off one without its quotes."""
_FOLLOWS = {"msgctxt": ("", "msgstr"), "msgid": ("", "msgstr", "msgctxt"), "msgstr": ("msgid",)}
"""What each keyword may follow; Babel would give a translation without its English to the next message."""
_MOST = 20


def read_catalogue(path: Path) -> Catalog:
    """All messages of a catalogue. Raises ProblemsFound."""
    text, file = read_text(path), shown_path(path)
    stop_at(list(islice(_torn_lines(text, file), _MOST)))
    stop_at(list(islice(_doubled(text, file), _MOST)))
    try:
        catalog: Catalog = read_po(io.StringIO(text), abort_invalid=True)
    except (PoFileError, ValueError, AttributeError) as error:  # the last is Babel's over a date that some Pythons take
        place = Place(file, getattr(error, "lineno", -1) + 1)
        hint = "mend it, or make it anew from the template of messages"
        wrong = str(error).rpartition(" on ")[0] or error
        fault = f"not a gettext catalogue: {'a date in it is none' if isinstance(error, AttributeError) else wrong}"
        raise ProblemsFound([Problem(place, fault, hint)]) from None
    return catalog


def _torn_lines(text: str, file: str) -> Iterator[Problem]:
    last = ""
    for number, line in enumerate(text.split("\n"), 1):
        written = line.strip().removeprefix("#~").strip()
        if not written or written.startswith("#"):
            continue
        keyword = written.partition(" ")[0]
        if not _WHOLE.fullmatch(written):
            hint = 'write `msgid`, `msgstr` or nothing, and then the text in quotes; a quote in it is `\\"`'
            yield Problem(Place(file, number), "is no line of a gettext catalogue", hint)
        elif keyword in _FOLLOWS and last not in _FOLLOWS[keyword]:
            hint = "write `msgid` with the English, and below it one `msgstr` with its translation"
            yield Problem(Place(file, number), f"`{keyword}` stands in the wrong place", hint)
        last = keyword if keyword in _FOLLOWS else last


def _doubled(text: str, file: str) -> Iterator[Problem]:
    """Babel would take the last of two translations without a word."""
    first: dict[tuple[str, str], int] = {}
    parts, keyword, begun = {"msgctxt": "", "msgid": ""}, "", 0
    for number, line in enumerate(text.split("\n"), 1):
        word, quote, said = line.strip().partition('"')
        if not quote or word.startswith("#"):
            continue
        keyword = word.strip() or keyword
        if keyword == "msgid" and word:
            begun = number
        if keyword in parts:
            parts[keyword] += said.removesuffix('"')
        elif word:
            earlier = first.setdefault((parts["msgctxt"], parts["msgid"]), begun)
            if earlier != begun:
                hint = "keep the one with the right translation, and take the other out"
                yield Problem(Place(file, begun), f"says the English of line {earlier} once more", hint)
            parts = dict.fromkeys(parts, "")
