"""What is typed into a field of the plan is read as it is on the command line."""

from __future__ import annotations

import pytest

from generator.computing import Workbook
from tests.formula.phone_machine import NUMBERS
from tests.phone.conftest import Ask, machine


@pytest.fixture(scope="module")
def typed(workbook: Workbook) -> Ask:
    formulas = workbook.javascript() + "const typing = { inputs, choices, measures, measureOf, units };\n"
    return machine(*NUMBERS, "neat_steps.js", "typed.js", formulas=f"{formulas}const say = (id) => id;\n")


@pytest.mark.parametrize(
    ("text", "of", "seconds"),
    [
        ("30 minutes", "break_time", 1800),
        ("1 hour", "break_time", 3600),
        ("1 h 30 min", "break_time", 5400),
        ("45 Seconds", "bleed_time", 45),
        ("2m", "bleed_time", 120),
        ("7:30 am", "first_kill_time", 7.5 * 3600),
        ("7:30pm", "first_kill_time", 19.5 * 3600),
        ("7 am", "first_kill_time", 7 * 3600),
        ("12 a.m.", "first_kill_time", 0),
        ("6 P.M.", "first_kill_time", 18 * 3600),
        ("7", "first_kill_time", None),
        ("13 pm", "first_kill_time", None),
        ("12:15 am", "first_kill_time", 900),
        ("12:15 PM", "first_kill_time", 12.25 * 3600),
        ("730", "first_kill_time", 7.5 * 3600),
        ("19.30", "first_kill_time", 19.5 * 3600),
        ("19:30 pm", "first_kill_time", None),
        ("0:30 am", "first_kill_time", None),
        ("24:00", "first_kill_time", None),
        ("5 lb", "break_time", None),
    ],
)
def test_times_and_spans(typed: Ask, text: str, of: str, seconds: float | None) -> None:
    assert typed("readTyped(text, of, typing, 'us', 0)", text=text, of=of).get("value") == seconds


def test_every_name_of_a_unit_is_known(typed: Ask, workbook: Workbook) -> None:
    """Each input in the units of both systems, by every name that content has for them."""
    library, book = workbook.library, workbook.book
    for of in workbook.givens.inputs:
        measure = library.measures[library.quantities[of].measure]
        if measure.form in ("clock", "duration"):
            continue
        for text in (measure.us.unit, measure.metric.unit):
            for name in (library.units[text].symbol, *library.units[text].also):
                if not name or book.meant_by(name) == ():
                    continue
                told = typed("readTyped(text, of, typing, system, 0)", text=f"5 {name}", of=of, system="us")
                assert told == {"value": pytest.approx(book.read(f"5 {name}", measure), rel=1e-12)}, (of, name)
