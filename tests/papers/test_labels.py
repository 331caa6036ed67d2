"""The words that the United States prescribe for a package of raw poultry, and their size."""

from collections.abc import Callable
from itertools import pairwise

from generator.papers.paper import Sheet
from tests.papers.conftest import Read

SIXTEENTH_INCH = 72 / 16
"""Points. 9 CFR 381.125(b)(1): lettering no smaller than one-sixteenth of an inch."""
CAPITAL = 0.668
"""Height of a capital over the size of this font, from its OS/2 table (sCapHeight 668 of 1000)."""
STATEMENTS = (
    ("Keep refrigerated or frozen. Thaw in refrigerator or microwave.", "Refrigerator"),
    (
        "Keep raw meat and poultry separate from other foods. Wash working surfaces (including cutting boards), "
        "utensils, and hands after touching raw meat or poultry.",
        "Soapy hands under a tap",
    ),
    ("Cook thoroughly.", "Skillet"),
    ("Keep hot foods hot. Refrigerate leftovers immediately or discard.", "Thermometer"),
)
"""9 CFR 381.125(b)(3)(i) to (iv), edition of 2006: each statement, and the sign that stands beside it."""
HEADING = "Safe Handling Instructions"
RATIONALE = (
    "Some food products may contain bacteria that could cause illness if the product is mishandled or cooked "
    "improperly. For your protection, follow these safe handling instructions."
)
"""9 CFR 381.125(b)(2). Its first sentence says that the product was inspected and passed: not so for an exempt bird."""


def test_labels_bear_the_words_and_signs_of_the_law(every_sheet: dict[str, Sheet]) -> None:
    for sheet in labels(every_sheet):
        lines = [("".join(str(run["text"]) for run in line["text"]), line) for line in sheet.data["lines"]]
        boxed = [(text, line) for text, line in lines if line["size"] in {"heading", "small"}]
        assert [text for text, _ in boxed] == [HEADING, RATIONALE, *(said for said, _ in STATEMENTS)]
        signs = [line["sign"]["words"].split(".")[0] for _, line in boxed if line["sign"]]
        assert signs == [sign for _, sign in STATEMENTS]
        assert not any("inspected and passed" in text for text, _ in lines)


def test_handling_words_are_as_large_as_the_law_asks(
    every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]
) -> None:
    for sheet in labels(every_sheet):
        words = printed(f"{sheet.bound_to}/{sheet.id}.pdf")[-1].words
        heading = max(word.size for word in words if word.text == "Handling")
        others = {word.size for word in words if word.text in {"bacteria", "refrigerated", "thoroughly.", "leftovers"}}
        assert min(others) * CAPITAL >= SIXTEENTH_INCH
        assert heading > max(others)


def test_lines_of_an_instruction_stand_closer_than_instructions(
    every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]
) -> None:
    for sheet in labels(every_sheet):
        words = printed(f"{sheet.bound_to}/{sheet.id}.pdf")[-1].words
        said = [word.text for word in words]
        before, first, after = (said.index(text) for text in ("microwave.", "separate", "Cook"))
        lines = sorted({round(word.bottom, 1) for word in words[first:after]})
        assert len(lines) > 1
        apart = words[first].bottom - words[before].bottom
        assert apart > max(low - high for high, low in pairwise(lines)), sheet.id


def test_only_stock_with_handling_words_apart_says_so_on_its_proof(
    every_sheet: dict[str, Sheet], printed: Callable[[str], list[Read]]
) -> None:
    said = {
        sheet.id: "Stick both on each bag." in printed(f"{sheet.bound_to}/{sheet.id}.pdf")[0].text
        for sheet in labels(every_sheet)
    }
    assert said == {
        "package_labels_letter_ten": True,
        "package_labels_letter_six": False,
        "package_labels_a4_eight": True,
        "package_labels_a4_fourteen": True,
    }


def labels(every_sheet: dict[str, Sheet]) -> list[Sheet]:
    return [sheet for sheet in every_sheet.values() if sheet.form == "labels"]
