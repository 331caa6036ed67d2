"""Sets papers with Typst. Everything that is peculiar to Typst stays in here and in the templates."""

from __future__ import annotations

import ctypes
import hashlib
import json
import re
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib import metadata
from importlib.util import find_spec
from itertools import accumulate
from pathlib import Path
from typing import Any

import typst

from generator.papers.binding import bind, papers_in
from generator.papers.codes import with_code
from generator.papers.data import Data
from generator.problems import Place, Problem, ProblemsFound

TEMPLATES = Path(__file__).parent / "templates"
_FONT = "fontpkg_atkinson_hyperlegible"
_REFUSED = re.compile(r"card=(?P<card>.*?);field=(?P<field>.*?);fault=(?P<fault>.*?);amount=(?P<amount>\d+)")
_MISSING = re.compile(r"(?:glyph|font|character)", re.IGNORECASE)
_REMEMBERED = 10
"""Compilations that Typst looks back on: from memory, and what was let go when measured agrees."""
_HINTS = {
    "lines": ("is too long by {amount} {lines}", "cut that much from it; the letters are as small as they may be"),
    "width": ("has a word or a number that is {amount} pt too wide", "use a shorter one, or part it by a hyphen"),
    "back": (
        "is the longest part of a back that is too long by {amount} {lines}",
        "cut that much from any part of it; a card has two sides, and the letters are as small as they may be",
    ),
}


@dataclass(frozen=True)
class Quire:
    """Papers that were set together, and each of them alone."""

    bound: bytes
    parts: list[bytes]
    fronts: list[bytes]
    """The first page, as PNG, of each that is pictured."""


def typeset(papers: list[Data], title: str, author: str) -> bytes:
    """One PDF/UA-1 of these papers: the same data, the same bytes. Raises ProblemsFound where a text does not fit."""
    return bind(papers_in(_compile(papers, title, author)[0]), title)


def typeset_quire(
    papers: list[Data],
    title: str,
    author: str,
    letters: str = "",
    pictured: Sequence[bool] = (),
    dots_per_inch: float = 144,
) -> Quire:
    """The same, parted as well, with pictures of those that are to have one, and fonts that have all those letters."""
    made = papers_in(_compile(papers, title, author, letters)[0])
    parts = [bind([each], paper["title"]) for each, paper in zip(made, papers, strict=True)]
    drawn = [place for place, wanted in enumerate(pictured) if wanted]
    starts = list(accumulate((len(made[place].pages) for place in drawn), initial=int(letters != "")))
    # What is set already is remembered, so that drawing is all that a picture costs.
    pages = _compile([papers[place] for place in drawn], title, author, letters, dots_per_inch) if drawn else []
    return Quire(bind(made, title), parts, [pages[start] for start in starts[: len(drawn)]])


def letters_of(papers: Sequence[Data]) -> str:
    """All that papers may show: what stands in them, and in the templates."""
    written = "".join(template.read_text(encoding="utf-8") for template in TEMPLATES.glob("*.typ"))
    return "".join(sorted({*written, *json.dumps(papers, ensure_ascii=False)} - {"\n"}))


def forget() -> None:
    """Lets go of what Typst laid out, some 20 MB a paper; else a process that builds farm after farm holds gigabytes.

    It remembers what the last compilations used, so that many of nothing follow. Linux keeps what is let go for the
    same process until it is asked for it.
    """
    for _ in range(_REMEMBERED + 1):
        typst.compile(b"", font_paths=_fonts())
    if sys.platform == "linux" and hasattr(memory := ctypes.CDLL(None), "malloc_trim"):
        memory.malloc_trim(0)


def engine() -> str:
    """Names everything but the data that a paper's bytes depend on."""
    written = (*sorted(TEMPLATES.glob("*.typ")), *sorted(TEMPLATES.parent.glob("*.py")))
    texts = hashlib.sha256(b"".join(path.read_bytes() for path in written)).hexdigest()
    versions = [metadata.version(name) for name in ("typst", "pikepdf", "segno", "pillow", _FONT.replace("_", "-"))]
    return repr((texts, versions))


def _compile(
    papers: list[Data], title: str, author: str, letters: str = "", pictures_at: float | None = None
) -> list[bytes]:
    """A PDF, or where a number of dots per inch is given, a picture of each page."""
    told = {"title": title, "author": author, "letters": letters, "papers": [with_code(paper) for paper in papers]}
    settings: dict[str, Any] = {
        "root": str(TEMPLATES),
        "font_paths": _fonts(),
        "format": "png" if pictures_at else "pdf",
        "sys_inputs": {"pack": json.dumps(told, ensure_ascii=False)},
        "timestamp": 0,
        **({"ppi": pictures_at} if pictures_at else {"pdf_standards": ["ua-1"]}),
    }
    try:
        made, warnings = typst.compile_with_warnings(str(TEMPLATES / "papers.typ"), **settings)
    except typst.TypstError as fault:
        raise ProblemsFound([_problem(str(fault), papers)]) from None
    if warnings:
        raise ProblemsFound(_problem(str(warning), papers) for warning in warnings)
    assert made is not None
    return made if isinstance(made, list) else [made]


@cache
def _fonts() -> typst.Fonts:
    """None but the font of the papers, read once."""
    found = find_spec(_FONT)
    assert found is not None
    assert found.origin is not None
    folder = Path(found.origin).parent / "files"
    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(folder)])


def _problem(message: str, papers: list[Data]) -> Problem:
    language, size = papers[0]["language"], papers[0]["paper"]
    if refused := _REFUSED.search(message):
        amount = int(refused["amount"])
        fault, hint = _HINTS[refused["fault"]]
        told = fault.format(amount=amount, lines="line" if amount == 1 else "lines")
        place = Place(f"papers/{refused['card']}")
        return Problem(place, f"`{refused['field']}` {told} ({language}, {size})", hint)
    place = Place(f"papers/{papers[0]['id']}" if len(papers) == 1 else "papers")
    first = next((line for line in message.splitlines() if line.strip()), "cannot be set")
    hint = "write it with letters that the font of the papers has" if _MISSING.search(message) else ""
    return Problem(place, f"{first.strip()} ({language}, {size})", hint)
