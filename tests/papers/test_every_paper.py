"""Reads every finished paper back: nothing outside the safe area, nothing too small, no word on top of another."""

import re
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

from pypdfium2 import PdfDocument
from zxingcpp import BarcodeFormat, read_barcodes

from generator.papers.paper import Sheet
from generator.pipeline.order import HERE, Order
from tests.papers.conftest import Read, Word, bottom_of, texts, top_of

PROCEDURES = sorted(
    name
    for path in (HERE / "content").glob("*/**/procedures/*.yml")
    for name in re.findall(r"(?m)^(\w+):", path.read_text(encoding="utf-8"))
)
SIZES = {"us-letter": (612, 792), "a4": (595.28, 841.89)}
MILLIMETRE = 72 / 25.4
SAFE = 6.35 * MILLIMETRE
"""A quarter of an inch, the edge that common printers leave white."""
FOOT = 8.5
LEAST_STEP, LEAST_TARGET = 18, 40
LEAST_IN_AN_EMERGENCY = 12
LEAST_OF_ALL = {"labels": 7}
"""Handling text of labels may be small; everywhere else nothing is smaller than foot and sources."""


def papers(every_sheet: dict[str, Sheet]) -> list[tuple[Sheet, str]]:
    return [(sheet, size) for sheet in every_sheet.values() for size in sheet.sizes()]


def test_every_procedure_has_a_card_in_both_sizes(site_papers: Path) -> None:
    assert len(PROCEDURES) > 50
    for size in SIZES:
        assert [name for name in PROCEDURES if not (site_papers / size / f"station_{name}.pdf").is_file()] == []


def test_pages_have_their_size_and_cards_two_sides(
    every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]
) -> None:
    for sheet, size in papers(every_sheet):
        pages = printed(f"{size}/{sheet.id}.pdf")
        for page in pages:
            assert (round(page.width), round(page.height)) == tuple(round(side) for side in SIZES[size])
        if sheet.form == "station":
            assert len(pages) == 2, (sheet.id, size)
        if sheet.form == "board":
            assert len(pages) == 1, sheet.id
        if sheet.form == "emergency":
            assert len(pages) <= 4, (sheet.id, size)


def test_nothing_stands_outside_the_safe_area(
    every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]
) -> None:
    outside = [
        (sheet.id, size, word.text)
        for sheet, size in papers(every_sheet)
        if sheet.form != "labels"
        for page in printed(f"{size}/{sheet.id}.pdf")
        for word in page.words
        if word.left < SAFE or word.right > page.width - SAFE or word.top < SAFE or word.bottom > page.height - SAFE
    ]
    assert outside == []


def test_labels_keep_inside_their_stock(every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]) -> None:
    sheets = [sheet for sheet in every_sheet.values() if sheet.form == "labels"]
    assert len(sheets) == 4
    for sheet in sheets:
        stock = {
            name: value * MILLIMETRE for name, value in sheet.data["stock"].items() if name not in {"columns", "rows"}
        }
        columns, rows = sheet.data["stock"]["columns"], sheet.data["stock"]["rows"]
        words = printed(f"{sheet.bound_to}/{sheet.id}.pdf")[-1].words
        assert len([word for word in words if word.text == "Lot"]) == columns * rows / (2 if sheet.data["apart"] else 1)
        lefts = [stock["left"] + column * (stock["width"] + stock["gap_across"]) for column in range(columns)]
        tops = [stock["top"] + row * (stock["height"] + stock["gap_down"]) for row in range(rows)]
        for word in words:
            assert any(left <= word.left and word.right <= left + stock["width"] for left in lefts), word
            assert any(top <= word.top and word.bottom <= top + stock["height"] for top in tops), word


def test_letters_are_as_large_as_their_distance_asks(
    every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]
) -> None:
    for sheet, size in papers(every_sheet):
        front = printed(f"{size}/{sheet.id}.pdf")[0]
        least = LEAST_OF_ALL.get(sheet.form, FOOT)
        assert min(word.size for word in front.words) >= least, (sheet.id, size)
        if sheet.form == "station":
            sizes = {round(word.size, 1) for word in front.words}
            for step in sheet.data["steps"]:
                first = str(step["action"][0]["text"]).split()[0]
                assert any(word.text == first and word.size >= LEAST_STEP for word in front.words), (sheet.id, first)
            assert not sheet.data["targets"] or max(sizes) >= LEAST_TARGET
            assert {each for each in sizes if each < 13} <= {FOOT}, sheet.id
            assert min(word.size for word in printed(f"{size}/{sheet.id}.pdf")[1].words) >= FOOT, (sheet.id, size)


def test_all_that_a_card_tells_stands_on_its_two_sides(
    every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]
) -> None:
    """But a key point without a reason that the front has, and sources where the back sends to the page for them."""
    for sheet, size in papers(every_sheet):
        if sheet.form == "station":
            sides = [squeezed(page.text) for page in printed(f"{size}/{sheet.id}.pdf")]
            missing = [text for text in told_by(sheet.data) if not any(squeezed(text) in side for side in sides)]
            assert missing == [], (sheet.id, size)
            named = squeezed("; ".join(sheet.data["sources"])) in sides[1]
            assert named or squeezed(sheet.data["words"]["sources_on_page"]) in sides[1], (sheet.id, size)


def told_by(card: dict[str, Any]) -> list[str]:
    points = [point for step in card["steps"] for point in step["points"]]
    parts = (
        *((stop, ("when", "act")) for stop in card["stops"]),
        *((caution, ("hazard", "avoid")) for caution in card["cautions"]),
        *((fault, ("sign", "remedy", "cause")) for fault in card["faults"]),
        *((step, ("action", "reason")) for step in card["steps"]),
        *((point, ("point", "why")) for point in points),
    )
    said = ["".join(run["text"] for run in part[key]) for part, keys in parts for key in keys]
    return [*said, *card["needs"], *(stop["tell"] for stop in card["stops"])]


def test_no_word_stands_on_another(every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]) -> None:
    for sheet, size in papers(every_sheet):
        for page in printed(f"{size}/{sheet.id}.pdf"):
            assert overlaps(page.words) == [], (sheet.id, size)


def overlaps(words: list[Word]) -> list[tuple[str, str]]:
    """Pairs of words whose letters meet: top and bottom as read are those of a box larger than the letters."""
    found, ordered = [], sorted(words, key=top_of)
    for number, one in enumerate(ordered):
        for other in ordered[number + 1 :]:
            if top_of(other) >= bottom_of(one) - 1:
                break
            if min(one.right, other.right) - max(one.left, other.left) > 1 and bottom_of(other) - top_of(other) > 1:
                found.append((one.text, other.text))
    return found


def test_the_check_for_overlaps_sees_one() -> None:
    words = [Word("one", 10, 40, 10, 24, 14), Word("other", 30, 60, 14, 28, 14), Word("next", 10, 40, 28, 42, 14)]
    assert overlaps(words) == [("one", "other")]


def test_a_pack_holds_every_paper_on_the_front_of_a_leaf(every_sheet: dict[str, Sheet], site_papers: Path) -> None:
    for size in SIZES:
        pack, place = texts(site_papers / size / "pack.pdf"), 0
        for sheet in (sheet for sheet in every_sheet.values() if size in sheet.sizes()):
            alone = texts(site_papers / size / f"{sheet.id}.pdf")
            assert pack[place : place + len(alone)] == alone, sheet.id
            place += len(alone) + len(alone) % 2
        assert place - len(pack) in {0, 1}


def test_every_foot_tells_an_old_print_from_a_new_one(
    every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]
) -> None:
    codes = [sheet.code for sheet in every_sheet.values()]
    assert len(set(codes)) == len(codes)
    for sheet, size in papers(every_sheet):
        front = printed(f"{size}/{sheet.id}.pdf")[0]
        foot = [word for word in front.words if abs(word.size - FOOT) < 0.1 and word.top > 0.9 * front.height]
        last = " ".join(word.text for word in foot)
        pages = len(printed(f"{size}/{sheet.id}.pdf"))
        assert last.startswith("Version "), sheet.id
        for part in ("Sixty broilers in July", "Demo Farm", sheet.code, f"1/{pages}"):
            assert part in last, (sheet.id, last)


def test_the_code_of_each_card_leads_to_its_page(every_sheet: dict[str, Sheet], site_papers: Path, demo: Order) -> None:
    """Read back as a phone does, from the corner of the front at a hundred dots to the inch."""
    stations = [sheet.id for sheet in every_sheet.values() if sheet.form == "station"]
    for station in stations[::3]:
        front = PdfDocument(site_papers / "us-letter" / f"{station}.pdf")[0]
        corner = front.render(scale=100 / 72, crop=(480, 650, 0, 0)).to_pil()
        (code,) = read_barcodes(corner)
        assert code.format == BarcodeFormat.QRCode
        page = f"work/{station.removeprefix('station_')}/"
        assert code.text == f"https://example.org/cone-to-cooler/{page}"
        assert (demo.site / page / "index.html").is_file()


def test_no_danger_and_no_stop_is_left_out(every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]) -> None:
    for sheet, size in papers(every_sheet):
        if sheet.form == "station":
            front = squeezed(printed(f"{size}/{sheet.id}.pdf")[0].text)
            for caution in sheet.data["cautions"]:
                assert squeezed(caution["word"].upper()) in front
                assert ends_of(caution["hazard"]) <= words_of(printed(f"{size}/{sheet.id}.pdf")[0].text), sheet.id
            for stop in sheet.data["stops"]:
                assert ends_of(stop["when"]) <= words_of(printed(f"{size}/{sheet.id}.pdf")[0].text), sheet.id
    dangers = [
        card
        for card in every_sheet["half_cards"].data["cards"]
        for each in card["cautions"]
        if each["signal"] == "danger"
    ]
    text = " ".join(page.text for page in printed("us-letter/half_cards.pdf"))
    assert len(dangers) > 3
    assert text.count("DANGER") == len(dangers)


def test_an_emergency_is_told_to_its_last_step_and_minute(
    every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]
) -> None:
    """Whole on one side, with whom to call and where we are at its head."""
    sheet = every_sheet["emergency_card"]
    assert len(sheet.data["jobs"]) == 11
    for size in SIZES:
        sides = printed(f"{size}/emergency_card.pdf")
        for side in sides:
            assert [told for told in ("911", "555-0111", "12 Demo Farm Road") if told not in side.text] == []
        for job in sheet.data["jobs"]:
            (side,) = [side for side in sides if squeezed(f"{job['title']}1") in squeezed(side.text)]
            missing = [told for told in all_told(job) if squeezed(told) not in squeezed(side.text)]
            assert missing == [], (size, job["title"])
            (title,) = [word for word in side.words if word.text == job["title"].split()[0] and word.size >= 15]
            below = [word for word in side.words if title.bottom < word.top < 0.94 * side.height]
            assert min(word.size for word in below) >= LEAST_IN_AN_EMERGENCY
        text = squeezed(" ".join(side.text for side in sides))
        for told in (
            "Start the timer. 20 min Cool, not ice.",
            "Start the timer. 10 min Gloves on",
            "Start the timer. 15 min Cool clean water.",
            "If in doubt, leave it.",
            "Call the emergency number from there.",
            "Start CPR if there is no good breath.",
            "Do not pull the person out.",
        ):
            assert squeezed(told) in text, (size, told)


def all_told(job: dict[str, Any]) -> list[str]:
    said = [(*(step[part] for part in ("action", "end")), *step["points"]) for step in job["steps"]]
    numbers = [step["number"] for step in job["steps"]]
    return ["".join(run["text"] for run in runs) for step in said for runs in step] + numbers


def squeezed(text: str) -> str:
    return "".join(text.split())


def words_of(text: str) -> set[str]:
    return set(text.replace("\u00a0", " ").split())


def ends_of(runs: list[dict[str, str]]) -> set[str]:
    words = "".join(run["text"] for run in runs).replace("\u00a0", " ").split()
    return {words[0], words[-1]}


def test_pages_of_a_pack_follow_its_list(site_papers: Path, every_sheet: dict[str, Sheet]) -> None:
    page = (site_papers.parent / "index.html").read_text(encoding="utf-8")
    for sheet in every_sheet.values():
        assert (site_papers / f"{sheet.id}.png").read_bytes().startswith(b"\x89PNG")
        assert page.count(f'"en/{sheet.id}.png"') == 1
        assert sheet.code in page
    starts = [int(text.split('"')[0]) for text in page.split("us-letter/pack.pdf#page=")[1:]]
    assert starts[0] == 1
    assert all(start % 2 == 1 for start in starts)
    assert all(one < other for one, other in pairwise(starts))


def test_charts_on_cards_carry_the_numbers_of_the_plan(printed: Callable[[str], list[Read]]) -> None:
    """As the demonstration plan sets them: a thermostat at 145 °F, a minute in the water, a limit of 40 °F in 6 h."""
    for size in SIZES:
        scald, chill = (printed(f"{size}/station_{name}.pdf") for name in ("scald", "chill_readings"))
        for card, lines in (
            (scald, ["The setting: 145 °F (63 °C), 60 s"]),
            (chill, ["Limit: 40 °F (4 °C)", "Time is up: 6 h 00 min"]),
        ):
            text = " ".join(page.text for page in card).replace("\u00a0", " ")
            assert [line for line in lines if line not in text] == []
            assert text.count("Sixty broilers in July") == len(card) + 1, "in each foot, and beside the chart"
