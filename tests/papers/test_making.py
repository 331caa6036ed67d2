"""How papers are made: the same bytes each time, tagged, remembered, and readable without colour."""

import io
import os
import re
import zlib
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pdfplumber
import pypdfium2
import pytest
import typst
from fontTools.ttLib import TTFont
from PIL import Image, ImageChops

from generator.papers.counting import count_pages
from generator.papers.faces import with_letters
from generator.papers.jobs import Job, PackJob, run_jobs
from generator.papers.miniature import shrink
from generator.papers.paper import Sheet, set_up
from generator.papers.station import each_once
from generator.papers.typesetting import TEMPLATES, _fonts, typeset, typeset_pack
from generator.papers.wording import Wording
from generator.problems import ProblemsFound

Card = Callable[..., dict[str, Any]]


def unpacked(pdf: bytes) -> bytes:
    streams = re.finditer(rb"/Type/ObjStm[^>]*/Length (\d+)>>\nstream\n", pdf)
    return b"".join(zlib.decompress(pdf[found.end() : found.end() + int(found[1])]) for found in streams)


def test_the_same_content_gives_the_same_bytes(scratch_card: Card) -> None:
    one, other = (typeset([scratch_card()], "Scratch", "Nobody") for _ in range(2))
    assert one == other
    assert typeset([scratch_card(title="Other")], "Scratch", "Nobody") != one


def test_a_paper_says_that_it_is_tagged_and_in_which_language(scratch_card: Card) -> None:
    pdf = typeset([scratch_card()], "Scratch card", "Nobody")
    inside = unpacked(pdf)
    assert b"<pdfuaid:part>1</pdfuaid:part>" in pdf
    assert b"/Marked true" in inside
    assert b"/Lang(en)" in inside
    assert b"/S/H1" in inside
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        assert document.metadata["Title"] == "Scratch card"


@pytest.mark.parametrize("name", ["crew_board", "station_transport"])
def test_packing_changes_no_page(wording: Wording, every_sheet: dict[str, Sheet], monkeypatch: Any, name: str) -> None:
    import generator.papers.typesetting as room

    drawn = {"pictures": every_sheet["station_evisceration"].data["pictures"]}
    data = [{**set_up(every_sheet[name], wording, "a4"), **drawn}]
    set_: list[bytes] = []
    compile_ = room._compile
    monkeypatch.setattr(room, "_compile", lambda *told: set_.extend(compile_(*told)) or set_)
    packed = typeset(data, "Board", "Nobody")
    plain = set_[0]
    assert len(packed) < 0.7 * len(plain)
    with pdfplumber.open(io.BytesIO(packed)) as one, pdfplumber.open(io.BytesIO(plain)) as other:
        assert len(one.pages) == len(other.pages) == count_pages(packed)
        for mine, theirs in zip(one.pages, other.pages, strict=True):
            for kind in ("char", "line", "rect", "curve", "image"):
                pairs = list(zip(mine.objects.get(kind, []), theirs.objects.get(kind, []), strict=True))
                assert all(a.get("text") == b.get("text") and a.get("mcid") == b.get("mcid") for a, b in pairs)
                assert all(abs(a[side] - b[side]) <= SHIFT for a, b in pairs for side in ("x0", "x1", "top", "bottom"))
        assert spoken(one.structure_tree) == spoken(other.structure_tree)
        assert len(holders(one.structure_tree)) < len(holders(other.structure_tree))


def test_another_reader_shows_a_packed_page_as_it_was(
    wording: Wording, every_sheet: dict[str, Sheet], monkeypatch: Any
) -> None:
    """The fonts are others then: their tables of letters are made here, and this reader draws with them."""
    import generator.papers.typesetting as room

    data = [set_up(every_sheet["station_waste_and_compost"], wording, "us-letter")]
    set_: list[bytes] = []
    compile_ = room._compile
    monkeypatch.setattr(room, "_compile", lambda *told: set_.extend(compile_(*told)) or set_)
    packed = pypdfium2.PdfDocument(typeset(data, "Pile", "Nobody"))
    plain = pypdfium2.PdfDocument(set_[0])
    for mine, theirs in zip(packed, plain, strict=True):
        words = mine.get_textpage().get_text_bounded()
        assert words == theirs.get_textpage().get_text_bounded()
        assert len(words) > 300
        below_the_code = (0, 0, 0, 100)  # whose edges may move by a dot
        pages = [page.render(scale=2, crop=below_the_code).to_pil().convert("L") for page in (mine, theirs)]
        different = sum(dot > 150 for dot in ImageChops.difference(*pages).tobytes())
        assert different < len(words) / 20, "a letter in another place differs by many dots"
        assert sum(dot < 100 for dot in pages[0].tobytes()) > 10 * len(words)


def test_letters_of_a_drawing_that_shows_through_stay_letters(scratch_card: Card) -> None:
    """Such a drawing is an object of its own, beside the page."""
    text = '<g opacity=".5"><text x="2" y="20" font-family="Atkinson Hyperlegible">Hello (all)</text></g>'
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 40">{text}</svg>'
    card = scratch_card(pictures=[{"svg": svg, "words": "A greeting"}])
    back = pypdfium2.PdfDocument(typeset([card], "Scratch", "Nobody"))[1]
    assert "Hello (all)" in back.get_textpage().get_text_bounded()


def test_letters_that_are_read_as_others_stay_what_they_are(scratch_card: Card) -> None:
    """An unseen place to break a word is told beside the letters."""
    card = scratch_card(good=[{"text": "Over\u200b(under)\u200b-way", "strong": False}])
    front = pypdfium2.PdfDocument(typeset([card], "Scratch", "Nobody"))[0]
    text = front.get_textpage().get_text_bounded().replace("\u200b", "")
    assert "Over(under)-way" in text


def test_a_table_of_letters_finds_its_glyphs() -> None:
    program = next(_fonts().glob("*-Regular.ttf")).read_bytes()
    whole = TTFont(io.BytesIO(program))
    glyphs = {ord(letter): whole.getGlyphID(whole.getBestCmap()[ord(letter)]) for letter in "Aß0"}
    made = TTFont(io.BytesIO(with_letters(program, glyphs)), checkChecksums=2)
    (table,) = made["cmap"].tables
    assert (table.platformID, table.platEncID) == (1, 0)
    assert {code: made.getGlyphID(name) for code, name in table.cmap.items() if name != ".notdef"} == glyphs
    assert made["glyf"]["A"] == whole["glyf"]["A"]


SHIFT = 0.3
"""Points: a tenth of a millimetre, which no eye sees and few printers hit. A drawing may be scaled by a thousandth."""


def spoken(tree: list[dict[str, Any]]) -> list[Any]:
    """What is said aloud, in order: the kind of each tag but plain holders, and its pieces of text."""
    found: list[Any] = []
    for tag in tree:
        if tag["type"] != "Div" and (tag.get("mcids") or tag.get("children")):
            found.append((tag["type"], tag.get("alt_text"), tag.get("page_number"), tuple(tag.get("mcids", ()))))
        found += spoken(tag.get("children", []))
    return found


def holders(tree: list[dict[str, Any]]) -> list[str]:
    return [tag["type"] for tag in tree if tag["type"] == "Div"] + [
        kind for tag in tree for kind in holders(tag.get("children", []))
    ]


def test_a_small_picture_is_the_large_one_in_four_greys(scratch_card: Card) -> None:
    png = typeset_pack([scratch_card()], "Scratch", "Nobody", [True], 20).fronts[0]
    large = Image.open(io.BytesIO(png)).convert("RGB").getchannel("G")
    small = Image.open(io.BytesIO(shrink(png)))
    assert small.size == large.size
    differences = [abs(a - b) for a, b in zip(large.tobytes(), small.convert("L").tobytes(), strict=True)]
    assert max(differences) <= 255 / 6 + 2


def test_what_is_set_once_is_not_set_again(tmp_path: Path, scratch_card: Card, monkeypatch: Any) -> None:
    alone = [Job("one.pdf", scratch_card(), "Scratch", "Nobody")]
    pack = [PackJob("pack.pdf", (scratch_card(),), ("part.pdf",), ("part.png",), "Pack", "Nobody")]
    first = run_jobs(alone, tmp_path) | run_jobs(pack, tmp_path)
    assert sorted(first) == ["one.pdf", "pack.pdf", "part.pdf", "part.png"]
    for kind in (Job, PackJob):
        monkeypatch.setattr(kind, "run", lambda self: pytest.fail("it was set again"))
    assert run_jobs([*alone, *pack], tmp_path) == first


def test_a_pack_that_does_not_fit_tells_every_fault(tmp_path: Path, scratch_card: Card) -> None:
    wide = [scratch_card(id=name, title="W" * 48) for name in ("one", "other")]
    with pytest.raises(ProblemsFound) as found:
        run_jobs([PackJob("pack.pdf", tuple(wide), ("", ""), ("", ""), "Pack", "Nobody")], tmp_path)
    assert [problem.place.file for problem in found.value.problems] == ["papers/one", "papers/other"]


@pytest.mark.skipif(not Path("/proc/self/statm").exists(), reason="memory is read as Linux tells it")
def test_what_was_set_is_let_go(wording: Wording, every_sheet: dict[str, Sheet]) -> None:
    """A process sets the papers of one farm after the other, and what it holds must not grow with them."""
    stations = [
        set_up(sheet, wording, "us-letter") for sheet in every_sheet.values() if sheet.id.startswith("station_")
    ]

    def held_after(farm: str) -> int:
        papers = tuple({**paper, "id": f"{paper['id']}_{farm}"} for paper in stations[:6])
        PackJob("pack.pdf", papers, tuple("abcdef"), ("",) * 6, f"Pack of {farm}", farm).run()
        return int(Path("/proc/self/statm").read_text().split()[1]) * os.sysconf("SC_PAGE_SIZE")

    grown = [held_after(farm) for farm in ("north", "south", "east", "west")]
    assert grown[-1] - grown[1] < 40e6, "without letting go it is 80 MB a farm"


def test_a_part_of_a_pack_is_the_paper_alone(scratch_card: Card, every_sheet: dict[str, Sheet]) -> None:
    drawn = every_sheet["station_compost_watch"].data
    papers = [
        scratch_card(),
        scratch_card(id="second", title="Second (and last)", stops=drawn["stops"], faults=drawn["faults"]),
    ]
    made = typeset_pack(papers, "Pack", "Nobody")
    for part, paper in zip(made.parts, papers, strict=True):
        with pdfplumber.open(io.BytesIO(part)) as one:
            alone = pdfplumber.open(io.BytesIO(typeset([paper], paper["title"], "Nobody")))
            assert one.metadata["Title"] == alone.metadata["Title"] == paper["title"]
            assert [page.extract_text() for page in one.pages] == [page.extract_text() for page in alone.pages]
            assert spoken(one.structure_tree) == spoken(alone.structure_tree)
            assert len(spoken(one.structure_tree)) > 20
        inside = unpacked(part)
        assert b"<pdfuaid:part>1</pdfuaid:part>" in part
        assert b"<xmpTPg:NPages>2</xmpTPg:NPages>" in part
        assert inside.count(b"/Type/Page/") == 2
        assert b"/Outlines" in inside
    assert b"Second" not in unpacked(made.parts[0])
    assert made.whole == typeset(papers, "Pack", "Nobody")


def test_a_search_finds_the_same_wherever_it_begins() -> None:
    """The first that fits, and the last where none does."""
    source = """#import "/parts.typ": first-that-fits
    #for fit in range(8) { for near in (none,) + range(7) {
      assert.eq(first-that-fits(range(7), way => way >= fit, near: near), calc.min(fit, 6), message: repr((fit, near)))
    } }"""
    typst.compile(source.encode(), root=TEMPLATES)


def test_signals_differ_without_colour() -> None:
    text = (TEMPLATES / "parts.typ").read_text(encoding="utf-8")
    looks = re.findall(
        r"(danger|warning|caution|notice): \(fill: (?:rgb\(\"(#\w+)\"\)|white), .*?edge: (.*), sign", text
    )
    assert [name for name, _, _ in looks] == ["danger", "warning", "caution", "notice"]
    greys = [grey(colour or "#ffffff") for _, colour, _ in looks]
    assert all(other - one >= 25 for one, other in pairwise(greys)), greys
    assert len({edge for _, _, edge in looks}) == 4


def grey(colour: str) -> float:
    """Luma by ITU-R BT.601, which is how black-and-white printers and copiers see colour."""
    red, green, blue = (int(colour[place : place + 2], 16) for place in (1, 3, 5))
    return 0.299 * red + 0.587 * green + 0.114 * blue


@pytest.mark.parametrize(
    ("told", "once"),
    [
        (["Crew lead", "Crew lead, then a vet"], ["Crew lead, then a vet"]),
        (["Emergency number, then crew lead", "Crew lead"], ["Emergency number, then crew lead"]),
        (["Crew lead", "Crew leader", "Crew lead"], ["Crew lead", "Crew leader"]),
    ],
)
def test_who_is_named_in_a_longer_line_is_not_named_again(told: list[str], once: list[str]) -> None:
    assert each_once(told) == once


def test_whom_to_tell_is_named_once(every_sheet: dict[str, Sheet]) -> None:
    told = every_sheet["station_chilling"].data["tell"]
    assert told == "Crew lead, later a licensed electrician"
    for sheet in every_sheet.values():
        named = str(sheet.data.get("tell", "")).split("; ")
        assert len(set(named)) == len(named)
        assert not any(other.startswith(f"{one},") for one in named for other in named), sheet.id
