"""All papers of the demonstration farm, set once a run and read back once."""

import io
import os
import pickle
import zlib
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from multiprocessing import get_context
from pathlib import Path
from typing import Any

import pdfplumber
import pypdfium2
import pytest

from generator.papers.catalogue import sheets
from generator.papers.paper import Sheet, set_up
from generator.papers.wording import Wording
from generator.pipeline.figuring import figure, open_content
from generator.pipeline.order import HERE, Order
from generator.telling.edition import Edition
from generator.telling.listing import SIZES

CHARTED = ("station_scald", "station_chill_readings")


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
    """A page as pdfplumber reads it: words with their places and sizes, in points."""

    width: float
    height: float
    words: list[Word]
    text: str


def read_pdf(pdf: bytes) -> list[Read]:
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        return [_read(page) for page in document.pages]


def _read(page: Any) -> Read:
    found = page.extract_words(extra_attrs=["size"], x_tolerance_ratio=0.2)
    words = [Word(w["text"], w["x0"], w["x1"], w["top"], w["bottom"], w["size"]) for w in found]
    return Read(page.width, page.height, words, " ".join(word.text for word in words))


def texts(pdf: Path) -> list[str]:
    """The text of each page, by another reader that is quick enough for packs."""
    document = pypdfium2.PdfDocument(pdf)
    return [page.get_textpage().get_text_bounded() for page in document]


@pytest.fixture(scope="session")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    return figure(*open_content(Order(HERE / "content", tmp_path_factory.mktemp("papers"))))


@pytest.fixture(scope="session")
def wording(edition: Edition) -> Wording:
    return Wording(edition)


@pytest.fixture(scope="session")
def every_sheet(wording: Wording) -> dict[str, Sheet]:
    return {sheet.id: sheet for sheet in sheets(wording)}


@pytest.fixture(scope="session")
def printed(demo: Order) -> Callable[[str], list[Read]]:
    """The papers of the finished site by their path below `papers/en/`, read on all processors and once a run."""
    folder, kept = demo.site / "papers" / "en", demo.into / "papers_read.pickle"
    if not kept.is_file():
        paths = sorted(path for path in folder.glob("*/*.pdf") if path.stem != "pack")
        names = [path.relative_to(folder).as_posix() for path in paths if is_read(path.stem, path.parent.name)]
        with ProcessPoolExecutor(mp_context=get_context("spawn")) as pool:
            pages = pool.map(read_pdf, [(folder / name).read_bytes() for name in names], chunksize=8)
            found = dict(zip(names, pages, strict=True))
        fresh = kept.with_suffix(f".{os.getpid()}")
        fresh.write_bytes(pickle.dumps(found))
        fresh.replace(kept)
    read: dict[str, list[Read]] = pickle.loads(kept.read_bytes())
    return read.__getitem__


def is_read(paper: str, size: str) -> bool:
    """All of the first size, and a fifth of the other: both are set by the same rules in much the same room."""
    return (
        size == SIZES[0] or not paper.startswith("station_") or zlib.crc32(paper.encode()) % 5 == 0 or paper in CHARTED
    )


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
