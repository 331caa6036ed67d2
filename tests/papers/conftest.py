"""All papers of the demonstration farm, set once a run and read back once."""

import ctypes
import os
import pickle
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, NamedTuple

import pypdfium2
import pypdfium2.raw
import pytest

from generator.papers.catalogue import sheets
from generator.papers.paper import Sheet, set_up
from generator.papers.wording import Wording
from generator.pipeline.order import Order
from generator.telling.edition import Edition
from tests.product import product_edition


@dataclass(frozen=True)
class Word:
    text: str
    left: float
    right: float
    top: float
    bottom: float
    size: float


@dataclass(frozen=True)
class Read:
    """A page as PDFium reads it: words with their places and sizes, in points."""

    width: float
    height: float
    words: list[Word]
    text: str


def read_pdf(pdf: bytes) -> list[Read]:
    return [_read(page) for page in pypdfium2.PdfDocument(pdf)]


def _read(page: Any) -> Read:
    words, open_ = list[Word](), list[Letter]()
    for letter in _letters(page):
        goes_on = open_ and abs(open_[-1].base - letter.base) < 1 and letter.left - open_[-1].right < letter.size / 5
        if open_ and (letter.text.isspace() or not goes_on):
            words.append(_word(open_, page.get_height()))
            open_ = []
        if not letter.text.isspace():
            open_.append(letter)
    words += [_word(open_, page.get_height())] if open_ else []
    return Read(page.get_width(), page.get_height(), words, " ".join(word.text for word in words))


class Letter(NamedTuple):
    text: str
    left: float
    right: float
    base: float
    size: float


def _letters(page: Any) -> Iterator[Letter]:
    read = page.get_textpage()
    x, y, box = ctypes.c_double(), ctypes.c_double(), [ctypes.c_double() for _ in range(4)]
    for place in range(read.count_chars()):
        pypdfium2.raw.FPDFText_GetCharOrigin(read, place, x, y)
        pypdfium2.raw.FPDFText_GetCharBox(read, place, *box)
        code = pypdfium2.raw.FPDFText_GetUnicode(read, place)
        text = "-" if code == BROKEN else chr(code)
        yield Letter(text, box[0].value, box[1].value, y.value, pypdfium2.raw.FPDFText_GetFontSize(read, place))


BROKEN = 2
"""What this reader says for a hyphen at the end of a line."""


def _word(letters: list[Letter], height: float) -> Word:
    """Top and bottom are those of the room that a font gives its letters: 0.29 of its size below the line."""
    first = letters[0]
    bottom = height - first.base + 0.29 * first.size
    text = "".join(letter.text for letter in letters)
    return Word(text, first.left, letters[-1].right, bottom - first.size, bottom, first.size)


def top_of(word: Word) -> float:
    """Of the letters, which are less high than the room that their font gives them."""
    return word.top + 0.3 * word.size


def bottom_of(word: Word) -> float:
    return word.bottom - 0.24 * word.size


def texts(pdf: Path) -> list[str]:
    """The text of each page."""
    document = pypdfium2.PdfDocument(pdf)
    return [page.get_textpage().get_text_bounded() for page in document]


@pytest.fixture(scope="session")
def edition() -> Edition:
    return product_edition()


@pytest.fixture(scope="session")
def wording(edition: Edition) -> Wording:
    return Wording(edition)


@pytest.fixture(scope="session")
def every_sheet(wording: Wording) -> dict[str, Sheet]:
    return {sheet.id: sheet for sheet in sheets(wording)}


@pytest.fixture(scope="session")
def printed(demo: Order) -> Callable[[str], list[Read]]:
    """Every paper of the finished site by its path below `papers/en/`, read once a run."""
    folder, kept = demo.site / "papers" / "en", demo.into / "papers_read.pickle"
    if not kept.is_file():
        paths = [path for path in folder.glob("*/*.pdf") if path.stem != "pack"]
        found = {path.relative_to(folder).as_posix(): read_pdf(path.read_bytes()) for path in paths}
        fresh = kept.with_suffix(f".{os.getpid()}")
        fresh.write_bytes(pickle.dumps(found))
        fresh.replace(kept)
    read: dict[str, list[Read]] = pickle.loads(kept.read_bytes())
    return read.__getitem__


@pytest.fixture
def scratch_card(wording: Wording, every_sheet: dict[str, Sheet]) -> Callable[..., dict[str, Any]]:
    """The data of a small card to change: one caution, two steps, one stop, one fault."""

    def make(**changes: Any) -> dict[str, Any]:
        card = set_up(every_sheet["station_transport"], wording, "us-letter")
        return {**card, "id": "scratch", **changes}

    return make


@pytest.fixture(scope="session")
def site_papers(demo: Order) -> Path:
    return demo.site / "papers" / "en"
