"""What a day came to, worked out on the phone as on the computer."""

from __future__ import annotations

import json
import random
from collections.abc import Callable
from typing import Any

import pytest
from py_mini_racer import MiniRacer

from generator.records.days import RecordBook, RecordedDay
from generator.records.entry import Entry, standing
from generator.records.merging import merge
from generator.records.phone_catalogue import record_programs
from generator.records.taking import take_file
from tests.formula.phone_machine import NUMBERS, shipped, without_modules
from tests.product import product_edition, product_workbook
from tests.records.samples import DEMO, NOON, entry

Ask = Callable[..., Any]
RUN = "2026-07-18-demo1"


@pytest.fixture(scope="module")
def ask() -> Ask:
    """Evaluates an expression beside the record page's own programs."""
    workbook = product_workbook()
    made = record_programs(product_edition())
    modules = shipped(*NUMBERS, "records.js", "curve.js", "figures.js", "day_tallies.js")
    parts = [workbook.javascript(), made["phone/readings.js"], made["phone/tallies.js"]]
    engine = MiniRacer()
    engine.eval(modules + "const symbols = {};\n" + "".join(map(without_modules, parts)))
    engine.eval("const formulas = { settle, compute, units };")

    def ask(expression: str, **given: object) -> Any:
        names, values = ", ".join(given), ", ".join(json.dumps(value) for value in given.values())
        return json.loads(str(engine.eval(f"JSON.stringify((({names}) => ({expression}))({values}))")))

    return ask


@pytest.fixture(scope="module")
def demo(book: RecordBook) -> list[Entry]:
    return merge(*(take_file(path, book.ranges).entries for path in DEMO))


def _agree(ask: Ask, book: RecordBook, entries: list[Entry]) -> dict[str, float]:
    day = RecordedDay(book, RUN, tuple(entries))
    frozen = day.frozen["values"] if day.frozen else {}
    planned = "plannedOf(formulas, frozen)"
    found: dict[str, float] = ask(f"talliesOf(entries, {planned})", entries=standing(entries), frozen=frozen)
    figures = ask(f"figuresOf(entries, readings, {planned})", entries=standing(entries), frozen=frozen)
    assert figures == pytest.approx(day.figures.values, rel=1e-12)
    assert found == pytest.approx(day.tallies, rel=1e-12)
    return found


def test_the_demonstration_day(ask: Ask, book: RecordBook, demo: list[Entry]) -> None:
    """59 of 60 killed, 1 dead on arrival and 1 condemned; 6 people from 5:50 to 11:30 for the 58 packed."""
    found = _agree(ask, book, demo)
    assert found["birds_killed_tally"] == 59
    assert found["birds_lost_share"] == pytest.approx(2 / 60)
    assert found["person_hours_tally"] == 6 * (5 * 60 + 40) * 60
    assert found["person_minutes_tally"] == pytest.approx(6 * 340 * 60 / 58)


@pytest.mark.parametrize("date", ["2026-02-30", "2026-02-29", "0000-07-18", "2026-13-01", "2028-02-29"])
def test_a_date_that_no_calendar_has(ask: Ask, book: RecordBook, demo: list[Entry], date: str) -> None:
    _agree(ask, book, [{**each, "run": f"{date}-demo1"} for each in demo])


@pytest.mark.parametrize("seed", range(20))
def test_any_part_of_the_day_in_any_order(ask: Ask, book: RecordBook, demo: list[Entry], seed: int) -> None:
    chance = random.Random(seed)
    _agree(ask, book, chance.sample(demo, chance.randrange(len(demo) + 1)))


def test_two_birds_cool_at_their_own_pace(ask: Ask, book: RecordBook) -> None:
    """Toward ice water at 0 °C from 40 °C, each halves what is left in 600 s and 1200 s; 10 °C is two halvings away."""
    series = [("one", 0, 40), ("one", 10, 20), ("one", 20, 10), ("two", 0, 40), ("two", 20, 20), ("two", 60, 5)]
    entries = [
        entry(n, of="breast_reading", name=name, value=273.15 + warm, at=NOON + at * 60_000, limit={"high": 283.15})
        for n, (name, at, warm) in enumerate(series, 1)
    ]
    bath = entry(99, of=str(book.workbook.library.readings["breast_reading"].curve.toward), value=273.15)  # type: ignore[union-attr]
    assert _agree(ask, book, [*entries, bath])["chill_tally"] == pytest.approx((1200 + 2400) / 2)


def test_a_bird_nears_the_tub_that_it_is_named_after(ask: Ask, book: RecordBook) -> None:
    """In tub 1 at 0 °C, from 40 °C to 5 °C in three halvings of 600 s each; 10 °C is two away. Tub 2 is warmer."""
    about: Any = {"of": "breast_reading", "name": "1 big", "limit": {"high": 283.15}}
    bird = [entry(1, **about, value=313.15, at=NOON), entry(2, **about, value=278.15, at=NOON + 1_800_000)]
    tubs = [entry(n, of="tub_reading", name=name, value=273.15 + warm) for n, name, warm in ((3, "1", 0), (4, "2", 8))]
    assert _agree(ask, book, [*bird, *tubs])["chill_tally"] == pytest.approx(1200)


def test_rows_stand_beside_the_plan(ask: Ask, demo: list[Entry]) -> None:
    """As in the report: 59 of 60 is 2 % less."""
    frozen = next(each for each in standing(demo) if each["kind"] == "plan")["values"]
    planned = "plannedOf(formulas, frozen)"
    rows = ask(f"tallyRows(entries, {planned}, formulas, 'us')", entries=standing(demo), frozen=frozen)
    told = {title: [cell.replace("\u00a0", " ") for cell in cells] for title, *cells in rows}
    assert told["Birds killed"] == ["59 birds", "60 birds", "−2%"]
    assert told["Lost, dead on arrival or condemned"] == ["3%", "", ""]
    assert told["Work for one bird"][0] == "35.2 min"
    assert told["Ice put in"][0] == "350.0 lb (158.8 kg)"
