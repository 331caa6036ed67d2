"""What a person may write into a card: it fits, or the build says which card, which field and how much to cut."""

from collections.abc import Callable
from itertools import pairwise
from typing import Any

import pytest
from pydantic import TypeAdapter, ValidationError

from generator.model.procedure import Step
from generator.papers.paper import Sheet, set_up
from generator.papers.typesetting import typeset
from generator.papers.wording import Wording
from generator.problems import ProblemsFound
from tests.papers.conftest import Word, read_pdf

Card = Callable[..., dict[str, Any]]


def said(text: str) -> list[dict[str, Any]]:
    return [{"text": text, "strong": False}]


def step(text: str) -> dict[str, Any]:
    return {"action": said(text), "points": [], "reason": []}


def refusal(card: dict[str, Any]) -> str:
    with pytest.raises(ProblemsFound) as found:
        typeset([card], "Scratch", "Nobody")
    return str(found.value)


def test_too_many_steps_are_told_in_lines(scratch_card: Card) -> None:
    two_lines = "Carry the crate to the table, set it down with both hands, look into it and close the lid again."
    first, hint = refusal(scratch_card(steps=[step(two_lines)] * 40)).splitlines()
    head, tail = "papers/scratch: `steps` is too long by ", " lines (en, us-letter)"
    assert first.startswith(head) and first.endswith(tail)
    assert hint == "    hint: cut that much from it; the letters are as small as they may be"
    lines = int(first.removeprefix(head).removesuffix(tail))
    more = int(refusal(scratch_card(steps=[step(two_lines)] * 50)).removeprefix(head).split()[0])
    assert 20 <= more - lines <= 24  # ten steps of two lines, with the air between them


def test_cutting_as_many_lines_as_told_is_enough_and_four_fifths_are_not(scratch_card: Card) -> None:
    steps = [step("Carry it.") for _ in range(60)]
    amount = int(refusal(scratch_card(steps=steps)).split("too long by ")[1].split()[0])
    refusal(scratch_card(steps=steps[: 60 - amount * 4 // 5]))
    typeset([scratch_card(steps=steps[: 60 - amount])], "Scratch", "Nobody")


def test_emergencies_for_more_than_two_leaves_are_told_in_lines(
    wording: Wording, every_sheet: dict[str, Sheet]
) -> None:
    """And few of them take one leaf, which is looked through faster."""
    whole = set_up(every_sheet["emergency_card"], wording, "us-letter")
    message = refusal({**whole, "jobs": [{**job, "steps": job["steps"] * 2} for job in whole["jobs"]]})
    assert message.startswith("papers/emergency_card: `steps` is too long by ")
    assert 100 < int(message.split("too long by ")[1].split()[0]) < 400  # as much again is four sides of some 80 lines
    assert len(read_pdf(typeset([{**whole, "jobs": whole["jobs"][:5]}], "Scratch", "Nobody"))) == 2


def fault(text: str) -> dict[str, Any]:
    return {part: said(text) for part in ("sign", "cause", "remedy")}


@pytest.mark.parametrize("paper", ["us-letter", "a4"])
def test_a_back_of_more_than_one_side_is_told_in_lines(scratch_card: Card, paper: str) -> None:
    one_line = fault("Go on.")
    first, hint = refusal(scratch_card(paper=paper, faults=[one_line] * 300)).splitlines()
    head, tail = "papers/scratch: `faults` is the longest part of a back that is too long by ", f" lines (en, {paper})"
    assert first.startswith(head) and first.endswith(tail)
    assert hint == (
        "    hint: cut that much from any part of it; a card has two sides, and the letters are as small as they may be"
    )
    lines = int(first.removeprefix(head).removesuffix(tail))
    assert 50 < lines < 300
    refusal(scratch_card(paper=paper, faults=[one_line] * (300 - lines * 2 // 3)))
    pages = read_pdf(typeset([scratch_card(paper=paper, faults=[one_line] * (300 - lines))], "Scratch", "Nobody"))
    assert len(pages) == 2


def test_a_full_back_is_set_in_two_columns_before_its_letters_shrink(scratch_card: Card) -> None:
    """And the words of one column end before the other begins."""
    long = "The bird is warm and heavy and it lies on its side, so take it out again and look at once, then go on."
    page = read_pdf(typeset([scratch_card(faults=[fault(long)] * 12)], "Scratch", "Nobody"))[1]
    faults = [word for word in page.words if word.text == "Likely:"]
    assert len(faults) == 12
    assert {word.left > page.width / 2 for word in faults} == {True, False}
    assert all(word.right < page.width / 2 or word.left > page.width / 2 for word in body(page.words))
    assert min(word.size for word in faults) >= 10


def body(words: list[Word]) -> list[Word]:
    """Without title, sources and foot."""
    return [word for word in words if 50 < word.top < 700]


@pytest.mark.parametrize(
    ("field", "change"),
    [
        ("title", {"title": "W" * 48}),
        ("steps", {"steps": [step("Donaudampfschifffahrtsgesellschaftskapitaensmuetzenabzeichenhersteller" * 2)]}),
        (
            "targets",
            {
                "targets": [{"title": "Heat", "pieces": [{"text": "1 000 000 000 000", "strong": True}], "below": ""}]
                * 4
            },
        ),
        ("faults", {"faults": [{part: said("W" * 90) for part in ("sign", "cause", "remedy")}]}),
    ],
)
def test_what_is_too_wide_is_told_with_its_field(scratch_card: Card, field: str, change: dict[str, Any]) -> None:
    message = refusal(scratch_card(**change))
    assert message.startswith(f"papers/scratch: `{field}` has a word or a number that is ")
    assert message.splitlines()[0].endswith(" pt too wide (en, us-letter)")


HEAD = 70
"""Points: below it the head of a front, with its number and title, has ended."""


def test_a_long_number_takes_room_from_short_ones(scratch_card: Card) -> None:
    """The birds a year of the larger exemption beside three other numbers."""
    shown = [
        {"title": "Number", "pieces": [{"text": text, "strong": True}], "below": ""}
        for text in ("20\u00a0000", "3", "14", "91")
    ]
    front = read_pdf(typeset([scratch_card(targets=shown)], "Scratch", "Nobody"))[0]
    numbers = [word for word in front.words if word.size >= 40 and word.top > HEAD]
    assert "".join(word.text for word in numbers).replace("\u00a0", "") == "2000031491"
    assert all(one.right < other.left for one, other in pairwise(numbers))


def test_words_a_third_longer_still_fit_or_are_told(scratch_card: Card) -> None:
    card = scratch_card()
    longer = [step("".join(run["text"] for run in each["action"]) + " y después otra vez") for each in card["steps"]]
    pages = read_pdf(typeset([{**card, "steps": longer, "language": "es"}], "Scratch", "Nobody"))
    assert pages[0].text.count("después") == len(longer)


@pytest.mark.parametrize("glyph", ["→", "☐", "☃", "好"])
def test_a_letter_that_the_font_lacks_is_refused(scratch_card: Card, glyph: str) -> None:
    message = refusal(scratch_card(steps=[step(f"Go {glyph} on.")]))
    assert message.startswith("papers/scratch: ")
    assert glyph in message
    assert "hint: write it with letters that the font of the papers has" in message


@pytest.mark.parametrize(
    "text",
    [
        '#panic("out")',
        '#read("/etc/passwd")',
        "$ x^2 $ *bold* _slanted_ `code` <label> @reference",
        "\\u{41} // no comment /* none */",
        "{scratch} #(1+1) ]#[",
    ],
)
def test_markup_is_shown_letter_by_letter(scratch_card: Card, text: str) -> None:
    pages = read_pdf(typeset([scratch_card(steps=[step(text)], title="<b>Bold</b>")], "Scratch", "Nobody"))
    assert text.replace(" ", "") in pages[0].text.replace(" ", "").replace("\n", "")
    assert "<b>Bold</b>" in pages[0].text


@pytest.mark.parametrize("hidden", ["\u202e", "\u200f", "\u2066", "\u0007", "\ufeff"])
def test_hidden_characters_never_get_as_far_as_paper(hidden: str) -> None:
    with pytest.raises(ValidationError, match="hidden character"):
        TypeAdapter(Step).validate_python({"action": f"Lift{hidden} it.", "source": "common practice"})
