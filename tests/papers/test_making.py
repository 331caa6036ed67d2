"""How papers are made: the same bytes each time, tagged, remembered, and readable without colour."""

import io
import os
import re
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pdfplumber
import pytest
import typst
from pikepdf import Dictionary, Pdf
from PIL import Image

from generator.papers import making
from generator.papers.binding import count_pages
from generator.papers.jobs import Job, PackJob, QuireJob, made
from generator.papers.making import run_jobs
from generator.papers.miniature import shrink
from generator.papers.paper import Sheet, set_up
from generator.papers.station import each_once
from generator.papers.typesetting import TEMPLATES, letters_of, typeset, typeset_quire
from generator.papers.wording import Wording
from generator.problems import ProblemsFound

Card = Callable[..., dict[str, Any]]


def test_the_same_content_gives_the_same_bytes(scratch_card: Card) -> None:
    one, other = (typeset([scratch_card()], "Scratch", "Nobody") for _ in range(2))
    assert one == other
    assert typeset([scratch_card(title="Other")], "Scratch", "Nobody") != one


def test_a_paper_says_that_it_is_tagged_and_in_which_language(scratch_card: Card) -> None:
    pdf = typeset([scratch_card()], "Scratch card", "Nobody")
    file = Pdf.open(io.BytesIO(pdf))
    root = file.Root
    assert b"<pdfuaid:part>1</pdfuaid:part>" in root.Metadata.read_bytes()
    assert root.MarkInfo.Marked
    assert root.ViewerPreferences.DisplayDocTitle
    assert str(root.Lang) == "en"
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        assert document.metadata["Title"] == "Scratch card"
        assert "H1" in {kind for kind, *_ in spoken(document.structure_tree)}


@pytest.mark.parametrize("name", ["crew_board", "station_transport"])
def test_binding_changes_no_page(wording: Wording, every_sheet: dict[str, Sheet], monkeypatch: Any, name: str) -> None:
    import generator.papers.typesetting as room

    drawn = {"pictures": every_sheet["station_evisceration"].data["pictures"]}
    data = [{**set_up(every_sheet[name], wording, "a4"), **drawn}]
    set_: list[bytes] = []
    compile_ = room._compile
    monkeypatch.setattr(room, "_compile", lambda *told: set_.extend(compile_(*told)) or set_)
    bound = typeset(data, "Board", "Nobody")
    plain = set_[0]
    assert len(bound) < 0.8 * len(plain)
    with pdfplumber.open(io.BytesIO(bound)) as one, pdfplumber.open(io.BytesIO(plain)) as other:
        assert len(one.pages) == len(other.pages) == count_pages(bound)
        for mine, theirs in zip(one.pages, other.pages, strict=True):
            for kind in ("char", "line", "rect", "curve", "image"):
                pairs = list(zip(mine.objects.get(kind, []), theirs.objects.get(kind, []), strict=True))
                assert all(a[key] == b[key] for a, b in pairs for key in SAME if key in b)
        assert spoken(one.structure_tree) == spoken(other.structure_tree)


SAME = ("x0", "x1", "top", "bottom", "text", "mcid", "non_stroking_color", "stroking_color", "fontname", "size")


def spoken(tree: list[dict[str, Any]]) -> list[Any]:
    """What is said aloud, in order: the kind of each tag but plain holders, and its pieces of text."""
    found: list[Any] = []
    for tag in tree:
        if tag["type"] != "Div" and (tag.get("mcids") or tag.get("children")):
            found.append((tag["type"], tag.get("alt_text"), tag.get("page_number"), tuple(tag.get("mcids", ()))))
        found += spoken(tag.get("children", []))
    return found


def test_a_small_picture_is_the_large_one_in_four_greys(scratch_card: Card) -> None:
    png = typeset_quire([scratch_card()], "Scratch", "Nobody", pictured=[True], dots_per_inch=20).fronts[0]
    large = Image.open(io.BytesIO(png)).convert("RGB").getchannel("G")
    small = Image.open(io.BytesIO(shrink(png)))
    assert small.size == large.size
    differences = [abs(a - b) for a, b in zip(large.tobytes(), small.convert("L").tobytes(), strict=True)]
    assert max(differences) <= 255 / 6 + 2


def test_what_is_set_once_is_not_set_again(tmp_path: Path, scratch_card: Card, monkeypatch: Any) -> None:
    alone = [Job("one.pdf", scratch_card(), "Scratch", "Nobody")]
    quire = [QuireJob("quire", (scratch_card(),), ("part.pdf",), ("part.png",), "", "Pack", "Nobody")]
    first = run_jobs(alone, tmp_path) | run_jobs(quire, tmp_path)
    assert sorted(first) == ["one.pdf", "part.pdf", "part.png", "quire"]
    pack = [PackJob("pack.pdf", (first["quire"],), "Pack")]
    first |= run_jobs(pack, tmp_path)
    for kind in (Job, QuireJob, PackJob):
        monkeypatch.setattr(kind, "run", lambda self: pytest.fail("it was made again"))
    assert run_jobs([*alone, *quire, *pack], tmp_path) == first
    for place, kept in enumerate(path for path in tmp_path.iterdir() if path.is_file()):
        spoiled = bytearray(kept.read_bytes())
        spoiled[(place * 7919) % len(spoiled)] ^= 0xFF
        kept.write_bytes(spoiled)
    monkeypatch.undo()
    assert run_jobs([*alone, *quire, *pack], tmp_path) == first


def dies(job: object) -> None:
    """As a process whose memory the system needs for another."""
    os._exit(9)


def test_a_process_that_was_ended_from_outside_is_told(tmp_path: Path, scratch_card: Card, monkeypatch: Any) -> None:
    """It leaves nothing that would be taken for a paper, and the next time all are set."""
    job = Job("card.pdf", scratch_card(), "Scratch", "Nobody")
    monkeypatch.setattr(making, "FEW", 0)
    monkeypatch.setattr(making, "made", dies)
    with pytest.raises(ProblemsFound) as caught:
        run_jobs([job], tmp_path)
    assert str(caught.value).splitlines() == [
        "papers: the process that did it was ended from outside",
        "    hint: give it 0.5 GB of memory; try again",
    ]
    assert list(tmp_path.iterdir()) == []
    monkeypatch.undo()
    assert list(run_jobs([job], tmp_path)) == ["card.pdf"]


def test_a_quire_that_does_not_fit_tells_every_fault(tmp_path: Path, scratch_card: Card) -> None:
    wide = [scratch_card(id=name, title="W" * 48) for name in ("one", "other")]
    with pytest.raises(ProblemsFound) as found:
        run_jobs([QuireJob("quire", tuple(wide), ("", ""), ("", ""), "", "Pack", "Nobody")], tmp_path)
    assert [problem.place.file for problem in found.value.problems] == ["papers/one", "papers/other"]


def test_a_letter_that_no_paper_shows_may_be_unknown_to_the_font(tmp_path: Path, scratch_card: Card) -> None:
    """As in the description of a picture."""
    quire = QuireJob("quire", (scratch_card(),), ("part.pdf",), ("part.png",), "abc\N{SNOWMAN}", "Pack", "Nobody")
    plain = QuireJob("quire", (scratch_card(),), ("part.pdf",), ("part.png",), "", "Pack", "Nobody")
    assert run_jobs([quire], tmp_path / "one") == run_jobs([plain], tmp_path / "other")


@pytest.mark.skipif(not Path("/proc/self/statm").exists(), reason="memory is read as Linux tells it")
def test_what_was_set_is_let_go(wording: Wording, every_sheet: dict[str, Sheet]) -> None:
    """A process sets the papers of one farm after the other, and what it holds must not grow with them."""
    stations = [
        set_up(sheet, wording, "us-letter") for sheet in every_sheet.values() if sheet.id.startswith("station_")
    ]

    def held_after(farm: str) -> int:
        papers = tuple({**paper, "id": f"{paper['id']}_{farm}"} for paper in stations[:4])
        made(QuireJob("quire", papers, tuple("abcd"), ("",) * 4, "", f"Pack of {farm}", farm))
        return int(Path("/proc/self/statm").read_text().split()[1]) * os.sysconf("SC_PAGE_SIZE")

    grown = [held_after(farm) for farm in ("north", "south", "east")]
    assert grown[-1] - grown[0] < 50e6, "without letting go it is some 50 MB a farm"


def test_a_part_of_a_quire_is_the_paper_alone(scratch_card: Card, every_sheet: dict[str, Sheet]) -> None:
    papers = two_cards(scratch_card, every_sheet)
    made = typeset_quire(papers, "Pack", "Nobody")
    for part, paper in zip(made.parts, papers, strict=True):
        with pdfplumber.open(io.BytesIO(part)) as one:
            alone = pdfplumber.open(io.BytesIO(typeset([paper], paper["title"], "Nobody")))
            assert one.metadata["Title"] == alone.metadata["Title"] == paper["title"]
            assert [page.extract_text() for page in one.pages] == [page.extract_text() for page in alone.pages]
            assert spoken(one.structure_tree) == spoken(alone.structure_tree)
            assert len(spoken(one.structure_tree)) > 20
        assert len(Pdf.open(io.BytesIO(part)).pages) == 2
        assert outline(part) == [paper["title"]]
    assert made.bound == typeset(papers, "Pack", "Nobody")


def test_a_pack_is_bound_from_quires(wording: Wording, scratch_card: Card, every_sheet: dict[str, Sheet]) -> None:
    """Tags, headings and fonts are those of one file, though its papers were set in several runs."""
    board = set_up(every_sheet["crew_board"], wording, "us-letter")  # of one page
    papers = [board, *two_cards(scratch_card, every_sheet)]
    letters = letters_of(papers)
    quires = [typeset_quire(some, "Pack", "Nobody", letters) for some in (papers[:1], papers[1:])]
    pack = PackJob("pack.pdf", tuple(quire.bound for quire in quires), "All papers").run()["pack.pdf"]
    parts = [part for quire in quires for part in quire.parts]
    assert outline(pack) == [paper["title"] for paper in papers]
    with pdfplumber.open(io.BytesIO(pack)) as whole:
        assert whole.metadata["Title"] == "All papers"
        texts = [page.extract_text() for page in whole.pages]
        assert texts[1] == "", "each paper begins on the front of a leaf"
        alone = [pdfplumber.open(io.BytesIO(part)) for part in parts]
        assert [text for text in texts if text] == [page.extract_text() for part in alone for page in part.pages]
        told = [tag for part in alone for tag in spoken(part.structure_tree) if tag[0] != "Document"]
        mine = [tag for tag in spoken(whole.structure_tree) if tag[0] != "Document"]
        assert [(kind, alt, marks) for kind, alt, _, marks in mine] == [(kind, alt, ms) for kind, alt, _, ms in told]
    read = Pdf.open(io.BytesIO(pack))
    assert read.check_pdf_syntax() == []
    tree = read.Root.StructTreeRoot
    for page in (page for page in read.pages if "/StructParents" in page):
        marked = tree.ParentTree.Nums[2 * int(page.StructParents) + 1]
        assert {tag.Pg.objgen for tag in marked} == {page.obj.objgen}
    objects = [each for each in read.objects if isinstance(each, Dictionary)]
    assert sum("/FontFile2" in each for each in objects) == 2, "one regular, one bold"
    used = {font.objgen for page in read.pages if "/Font" in page.Resources for font in page.Resources.Font.values()}
    assert len(used) == 2
    assert not any("/ID" in each for each in objects if each.get("/Type") == "/StructElem")


def two_cards(scratch_card: Card, every_sheet: dict[str, Sheet]) -> list[dict[str, Any]]:
    drawn = every_sheet["station_compost_watch"].data
    second = scratch_card(id="second", title="Second (and last)", stops=drawn["stops"], faults=drawn["faults"])
    return [scratch_card(), second]


def outline(pdf: bytes) -> list[str]:
    with Pdf.open(io.BytesIO(pdf)).open_outline() as listed:
        return [str(item.title) for item in listed.root]


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
