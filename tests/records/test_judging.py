"""Readings against limits, readings due, curves and the table: by hand, and alike on both hands."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from generator.model.record import Logged
from generator.records.curve import Point, fit_curve, reached_at, time_of, value_at
from generator.records.judging import due, judge, limit_for
from generator.records.merging import merge
from generator.records.table import to_table
from tests.records.samples import NOON, entry, sounds

Phone = Callable[..., Any]
MINUTE = 60_000


@pytest.mark.parametrize(
    ("value", "limit", "at", "verdict"),
    [
        (300, {}, NOON, "free"),
        (300, {"low": 290, "high": 310}, NOON, "inside"),
        (289, {"low": 290, "high": 310}, NOON, "low"),
        (311, {"low": 290, "high": 310}, NOON, "high"),
        (310 + 1e-8, {"high": 310}, NOON, "inside"),
        (310, {"high": 310}, NOON, "inside"),
        (290, {"low": 290}, NOON, "inside"),
        (290 - 1e-8, {"low": 290}, NOON, "inside"),
        (311, {"low": 290, "high": 310, "by": NOON}, NOON, "on_the_way"),
        (311, {"low": 290, "high": 310, "by": NOON}, NOON + 1, "high"),
        (289, {"low": 290, "high": 310, "by": NOON}, NOON, "low"),
        (289, {"low": 290, "by": NOON}, NOON, "on_the_way"),
        (289, {"low": 290, "by": NOON}, NOON + 1, "low"),
    ],
)
def test_a_value_is_judged_by_its_limits(phone: Phone, value: float, limit: Any, at: int, verdict: str) -> None:
    assert judge(value, limit, at) == verdict
    assert phone("judge(value, limit, at)", value=value, limit=limit, at=at) == verdict


def logged(**fields: Any) -> Logged:
    about = {"title": "T", "phase": "p", "order": 1, "measure": "m", "range": ("0 K", "1 K"), "source": "arithmetic"}
    return Logged.model_validate({**about, **fields})


ITEMS = {
    "kettle": logged(high="hottest", too_high={"act": "Cool it."}, rhythm="each", until=("put_in", "home")),
    "core": logged(
        high="coldest",
        too_high={"act": "Wait."},
        rhythm="each",
        since="put_in",
        until=("taken_out",),
        within="allowed",
        per_lot=True,
    ),
    "bath": logged(
        high="coldest", too_high={"act": "Ice."}, rhythm="each", since="put_in", until=("taken_out",), per_lot=True
    ),
    "cellar": logged(  # read when one likes
        low="coldest", high="refused_today", too_low={"act": "Shut the door."}, too_high={"act": "Open the door."}
    ),
}
VALUES: dict[str, float | str] = {"hottest": 370.0, "coldest": 278.0, "each": 600.0, "allowed": 7200.0}
ON_PHONE = {name: item.model_dump(exclude_none=True, mode="json") for name, item in ITEMS.items()}


def both_due(phone: Phone, entries: list[Any], *asked: str) -> list[Any]:
    """Of what is asked for: its lot, its name where it has one, and the minutes after noon."""
    found = due(ITEMS, VALUES, entries)
    told = phone("due(items, values, entries)", items=ON_PHONE, values=VALUES, entries=entries)
    assert [(each["of"], each["lot"], each["name"], each["at"]) for each in told] == found
    return [(of, lot, *([name] if name else []), (at - NOON) / MINUTE) for of, lot, name, at in found if of in asked]


def test_readings_come_due_on_their_rhythm(phone: Phone) -> None:
    put_in = [entry(n, kind="mark", of="put_in", lot=lot, at=NOON) for n, lot in ((1, "a"), (2, "b"))]
    assert both_due(phone, [], "core") == []
    assert both_due(phone, put_in, "core") == [("core", "a", 10), ("core", "b", 10)]
    warm = entry(3, of="core", lot="a", value=290, limit={"high": 278}, at=NOON + 5 * MINUTE)
    assert both_due(phone, [*put_in, warm], "core") == [("core", "b", 10), ("core", "a", 15)]
    cold = entry(4, of="core", lot="a", value=277, limit={"high": 278}, at=NOON + 12 * MINUTE)
    assert both_due(phone, [*put_in, warm, cold], "core") == [("core", "b", 10)]
    out = entry(5, kind="mark", of="taken_out", lot="b", at=NOON + 20 * MINUTE)
    assert both_due(phone, [*put_in, warm, cold, out], "core") == []
    assert both_due(phone, [entry(7, of="cellar", at=NOON)], "cellar") == []


@pytest.mark.parametrize("end", ["put_in", "home"])
def test_a_rhythm_ends_with_whichever_comes_first(phone: Phone, end: str) -> None:
    read = entry(1, of="kettle", at=NOON)
    assert both_due(phone, [read], "kettle") == [("kettle", "", 10)]
    assert both_due(phone, [read, entry(2, kind="mark", of=end, at=NOON + MINUTE)], "kettle") == []


def test_one_bird_that_is_cold_does_not_speak_for_another(phone: Phone) -> None:
    put_in = entry(1, kind="mark", of="put_in", lot="a", at=NOON)
    about: Any = {"of": "core", "lot": "a", "limit": {"high": 278}}
    big = entry(2, **about, name="big", value=283, at=NOON + 5 * MINUTE)
    small = entry(3, **about, name="small", value=276, at=NOON + 9 * MINUTE)
    assert both_due(phone, [put_in, small], "core") == []
    assert both_due(phone, [put_in, big, small], "core") == [("core", "a", "big", 15)]
    again = entry(4, **about, name="big", value=277, at=NOON + 16 * MINUTE)
    assert both_due(phone, [put_in, big, small, again], "core") == []


def test_each_named_bath_has_its_own_time_and_its_own_end(phone: Phone) -> None:
    put_in = entry(1, kind="mark", of="put_in", lot="a", at=NOON)
    one = entry(2, of="bath", lot="a", name="1", value=274, at=NOON + 3 * MINUTE)
    two = entry(3, of="bath", lot="a", name="12", value=274, at=NOON + 5 * MINUTE)
    big = entry(4, of="core", lot="a", name="1 big", value=290, limit={"high": 278}, at=NOON + 6 * MINUTE)
    read = [put_in, one, two, big]
    both = ("bath", "core")
    assert both_due(phone, read, *both) == [("bath", "a", "1", 13), ("bath", "a", "12", 15), ("core", "a", "1 big", 16)]
    out = entry(5, kind="mark", of="taken_out", lot="a", name="1", at=NOON + 8 * MINUTE)
    assert both_due(phone, [*read, out], *both) == [("bath", "a", "12", 15)]
    filled_anew = entry(6, of="bath", lot="a", name="1", value=274, at=NOON + 9 * MINUTE)
    assert both_due(phone, [*read, out, filled_anew], *both) == [("bath", "a", "12", 15), ("bath", "a", "1", 19)]
    everything = entry(7, kind="mark", of="taken_out", lot="a", at=NOON + 10 * MINUTE)
    assert both_due(phone, [*read, out, filled_anew, everything], *both) == []


def test_what_follows_on_a_clock_that_was_put_right_follows_still(phone: Phone) -> None:
    """Put in while the clock was an hour fast; it was put right, and two readings came 10 and 25 min later."""
    put_in = entry(1, kind="mark", of="put_in", lot="a", at=NOON + 60 * MINUTE)
    read = [entry(n, of="bath", lot="a", value=274, at=NOON + m * MINUTE) for n, m in ((2, 10), (3, 25))]
    assert both_due(phone, [put_in, *read], "bath") == [("bath", "a", 35)]
    out = entry(4, kind="mark", of="taken_out", lot="a", name="1", at=NOON + 30 * MINUTE)
    named = entry(3, of="bath", lot="a", name="1", value=274, at=NOON + 90 * MINUTE)
    assert both_due(phone, [put_in, named, out], "bath") == []


def test_the_limit_in_force_knows_until_when_it_need_not_be_met(phone: Phone) -> None:
    put_in = [entry(1, kind="mark", of="put_in", lot="a", at=NOON)]
    for name, lot, limit in (
        ("core", "a", {"high": 278, "by": NOON + 120 * MINUTE}),
        ("core", "b", {"high": 278}),
        ("kettle", "", {"high": 370}),
        ("cellar", "", {"low": 278}),
    ):
        assert limit_for(ITEMS[name], VALUES, put_in, lot) == limit
        given_to = {"item": ON_PHONE[name], "values": VALUES, "entries": put_in, "lot": lot}
        assert phone("limitFor(item, values, entries, lot)", **given_to) == limit


@st.composite
def read_and_marked(draw: st.DrawFn) -> Any:
    """What starts, is read and ends in two lots, of things with names that begin alike, on two clocks."""
    of = draw(st.sampled_from(["kettle", "core", "bath", "put_in", "taken_out"]))
    name = draw(st.sampled_from([{}, {"name": "1"}, {"name": "12"}, {"name": "1 big"}]))
    about = (
        {"kind": "mark"} if of in ("put_in", "taken_out") else {"value": draw(st.integers(270, 280)), "written": "x"}
    )
    minute, phone = draw(st.integers(-60, 60)), draw(st.sampled_from(["phoneaaa", "phonebbb"]))
    limit = draw(st.sampled_from([{}, {"limit": {"high": 278.0, "by": NOON}}]))
    lot, number = draw(st.sampled_from(["a", "b"])), draw(st.integers(1, 30))
    return entry(number, phone, of=of, lot=lot, at=NOON + minute * MINUTE, **about, **name, **limit)


@settings(max_examples=60, deadline=None)
@given(st.lists(sounds() | read_and_marked(), max_size=10))
def test_both_hands_find_the_same_due(phone: Phone, entries: Any) -> None:
    both_due(phone, merge(entries), *ITEMS)


RATE, LAG, START, TOWARD = 1 / 1800, 1.2, 308.0, 273.5


def falling(*minutes: int) -> list[Point]:
    """Exactly 273.5 + 1.2 (308 - 273.5) exp(-t / 30 min), after a start at 308 K."""
    later = [Point(NOON + m * MINUTE, TOWARD + LAG * (START - TOWARD) * math.exp(-m / 30)) for m in minutes]
    return [Point(NOON, START), *later]


def test_a_curve_is_found_again_and_foretells(phone: Phone) -> None:
    points = falling(20, 40, 60)
    curve = fit_curve(points, TOWARD)
    assert curve is not None
    assert curve.rate == pytest.approx(RATE, rel=1e-9)
    assert curve.spread == pytest.approx(0, abs=1e-9)
    # 5 K above what it nears: ln(1.2 * 34.5 / 5) * 30 min = 63.4 min after the start
    at = time_of(curve, TOWARD + 5)
    assert at == pytest.approx(NOON + math.log(LAG * 34.5 / 5) * 30 * MINUTE, abs=1)
    assert value_at(curve, NOON + 90 * MINUTE) == pytest.approx(TOWARD + LAG * 34.5 * math.exp(-3), rel=1e-9)
    on_phone = [point._asdict() for point in points]
    told = phone("timeOf(fitCurve(points, toward), toward + 5)", points=on_phone, toward=TOWARD)
    assert told == pytest.approx(at, abs=1)


@pytest.mark.parametrize("beyond", [0, -5])
def test_a_curve_never_comes_to_what_it_nears_nor_beyond(phone: Phone, beyond: float) -> None:
    points = falling(20, 40, 60)
    curve = fit_curve(points, TOWARD)
    assert curve is not None
    assert time_of(curve, TOWARD + beyond) is None
    on_phone = [point._asdict() for point in points]
    ask = "timeOf(fitCurve(points, toward), toward + beyond) === null"
    assert phone(ask, points=on_phone, toward=TOWARD, beyond=beyond)


def test_a_curve_agrees_with_a_fit_by_numpy() -> None:
    noise = np.random.default_rng(3).normal(0, 0.2, 6)
    minutes = (20, 30, 45, 60, 75, 90)
    points = [p._replace(value=p.value + float(n)) for p, n in zip(falling(*minutes)[1:], noise, strict=True)]
    points = [Point(NOON, START), *points]
    curve = fit_curve(points, TOWARD)
    late = [point for point in points if point.value - TOWARD <= 0.7 * (START - TOWARD)]
    seconds = [(point.at - NOON) / 1000 for point in late]
    slope, _ = np.polyfit(seconds, [math.log(point.value - TOWARD) for point in late], 1)
    assert curve is not None
    assert curve.rate == pytest.approx(-slope, rel=1e-9)


@pytest.mark.parametrize(
    "points",
    [[], [(0, 300)], [(0, 300), (1, 300)], [(0, 300), (1, 310)], [(0, 273.5), (1, 273.5)], [(0, 300), (0, 290)]],
)
def test_there_is_no_curve_where_nothing_nears(phone: Phone, points: Any) -> None:
    assert fit_curve([Point(*each) for each in points], TOWARD) is None
    on_phone = [{"at": at, "value": value} for at, value in points]
    assert phone("fitCurve(points, toward) === null", points=on_phone, toward=TOWARD)


POINTS = st.lists(st.tuples(st.integers(0, 200), st.integers(2700, 3200)), max_size=7)


@settings(max_examples=80, deadline=None)
@given(POINTS, st.integers(2650, 3250), st.integers(2650, 3250))
def test_both_hands_draw_the_same_curve(phone: Phone, raw: Any, near: int, goal: int) -> None:
    points = [Point(NOON + minute * MINUTE, tenths / 10) for minute, tenths in sorted(raw)]
    toward, limit = near / 10, goal / 10
    given_to = {"points": [point._asdict() for point in points], "toward": toward, "limit": limit}
    curve, told = fit_curve(points, toward), phone("fitCurve(points, toward)", **given_to)
    assert (curve is None) == (told is None)
    if curve:
        assert told["rate"] == pytest.approx(curve.rate, rel=1e-6)
        assert told["difference"] == pytest.approx(curve.difference, rel=1e-6)
    reached = reached_at(points, toward, limit)
    assert phone("reachedAt(points, toward, limit)", **given_to) == (reached and pytest.approx(reached, abs=1))


@settings(max_examples=40, deadline=None)
@given(st.lists(sounds(), max_size=6), st.floats(allow_nan=False, allow_infinity=False))
@example([], 0.00002)
@example([], 1e16)
@example([], 1e21)
@example([], 1.5e-7)
@example([], -0.000001)
def test_both_hands_write_the_same_table(phone: Phone, entries: Any, value: float) -> None:
    odd = entry(40, value=value if value % 1 else int(value), limit={"low": value if value % 1 else int(value)})
    whole = merge(entries, [odd])
    assert phone("toTable(whole)", whole=whole) == to_table(whole)


def test_nothing_in_a_table_is_taken_for_a_formula(phone: Phone) -> None:
    texts = ["=1+1", "+1", "-1", "@sum", 'he said "no", twice', "plain"]
    whole = [entry(n, kind="remark", text=text) for n, text in enumerate(texts, 1)]
    written = to_table(whole)
    assert phone("toTable(whole)", whole=whole) == written
    rows = list(csv.DictReader(io.StringIO(written)))
    assert [row["text"] for row in rows] == ["'=1+1", "'+1", "'-1", "'@sum", 'he said "no", twice', "plain"]
    assert rows[0]["time"] == "2026-07-18 12:01:00"
