"""Sheets to write in and to tick: each table under its own title, clear of the table before it."""

import pypdfium2
import pypdfium2.raw
import pytest

from generator.papers.paper import Sheet, set_up
from generator.papers.typesetting import typeset
from generator.papers.wording import Wording
from tests.papers.conftest import bottom_of, read_pdf, top_of

FORMS = ("bring_list", "day_record", "sign_off")
PAPERS = ("us-letter", "a4")
LEAST_GAP = 6
"""Points from the last line of a table to the letters of the next title, so that it seems no last row."""


@pytest.fixture(scope="module")
def forms(every_sheet: dict[str, Sheet], wording: Wording) -> dict[tuple[str, str], bytes]:
    return {
        (name, paper): typeset([set_up(every_sheet[name], wording, paper)], "Forms", "Nobody")
        for name in FORMS
        for paper in PAPERS
    }


def rules(page: pypdfium2.PdfPage) -> list[float]:
    """How far from the top each level line of a table lies."""
    boxes = [each.get_bounds() for each in page.get_objects((pypdfium2.raw.FPDF_PAGEOBJ_PATH,))]
    return [page.get_height() - (low + high) / 2 for left, low, right, high in boxes if high - low < 2 < right - left]


@pytest.mark.parametrize("paper", PAPERS)
def test_titles_of_tables_stand_clear_of_the_table_above(forms: dict[tuple[str, str], bytes], paper: str) -> None:
    for name in ("day_record", "sign_off"):
        pdf = forms[name, paper]
        titles = 0
        for page, read in zip(pypdfium2.PdfDocument(pdf), read_pdf(pdf), strict=True):
            above = rules(page)
            assert len(above) > 10
            for word in (word for word in read.words if round(word.size) == 16):
                titles += 1
                assert [y for y in above if top_of(word) - LEAST_GAP < y < bottom_of(word)] == [], (name, word.text)
        assert titles > 10


def test_a_table_that_goes_on_bears_its_title_again(forms: dict[tuple[str, str], bytes]) -> None:
    """No leaf of the sign-off begins with a row that does not say to which part of the day it belongs."""
    for paper in PAPERS:
        first = [page.words[0] for page in read_pdf(forms["sign_off", paper])]
        assert [round(word.size) for word in first[1:]] == [16] * len(first[1:]), paper


def test_the_bring_list_is_one_leaf(forms: dict[tuple[str, str], bytes]) -> None:
    assert [len(read_pdf(forms["bring_list", paper])) for paper in PAPERS] == [2, 2]
