"""The text of one file, refused when it could not be what the writer meant."""

from __future__ import annotations

import re
from pathlib import Path

from generator.problems import Place, Problem, ProblemsFound
from generator.reading.files import shown_path

LARGEST = 1_000_000
"""Bytes; the whole content is about as much, so one file of this size is a mistake."""
_HIDDEN = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]")


def read_text(path: Path) -> str:
    """The file as text, lines ending in a line feed, a byte order mark taken off. Raises ProblemsFound."""
    file = shown_path(path)
    content = _bytes(path, file)
    try:
        text = content.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        fault = f"not UTF-8: byte 0x{content[error.start]:02X} at offset {error.start}"
        raise ProblemsFound([Problem(Place(file, line), fault, "save the file as UTF-8 in your editor")]) from None
    problems = [*_tabs(text, file), *_hidden_characters(text, file)]
    if problems:
        raise ProblemsFound(problems)
    return text


def _bytes(path: Path, file: str) -> bytes:
    try:
        if not path.is_file():
            raise ProblemsFound([Problem(Place(file), "is not a plain file", "put a plain text file in its place")])
        size = path.stat().st_size
        if size > LARGEST:
            fault = f"the file is {size / 1e6:.1f} MB; the limit is {LARGEST / 1e6:.0f} MB"
            raise ProblemsFound([Problem(Place(file), fault, "split it into smaller files")])
        return path.read_bytes()
    except OSError as error:
        fault = f"the file cannot be read: {error.strerror}"
        raise ProblemsFound([Problem(Place(file), fault, "check its owner and permissions")]) from None


def _tabs(text: str, file: str) -> list[Problem]:
    """One problem however many tabs there are: a file that is indented by tabs has one on every line."""
    lines = [number for number, line in enumerate(text.split("\n"), 1) if "\t" in line]
    if not lines:
        return []
    column = text.split("\n")[lines[0] - 1].index("\t") + 1
    more = f" (and on {len(lines) - 1} more lines)" if len(lines) > 1 else ""
    return [Problem(Place(file, lines[0], column), f"a tab{more}", "use spaces; two for each level")]


def _hidden_characters(text: str, file: str) -> list[Problem]:
    problems = []
    for found in _HIDDEN.finditer(text):
        before = text[: found.start()]
        place = Place(file, before.count("\n") + 1, found.start() - before.rfind("\n"))
        problems.append(Problem(place, f"hidden character U+{ord(found[0]):04X}", "delete it and type the text again"))
        if len(problems) == 20:
            break
    return problems
