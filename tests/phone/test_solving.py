"""Searches and weights against plain counting, and partial days against whole ones."""

import pytest

from generator.computing import Workbook
from tests.phone.conftest import Ask

INPUT = {"low": 0, "high": 100, "whole": True}
LOOSE = {"low": 0, "high": 10, "whole": False}


@pytest.mark.parametrize("bound", [0, 1, 6, 7, 49, 50, 9999])
def test_the_most_of_whole_numbers(ask: Ask, bound: int) -> None:
    """n * n <= bound, found again by trying every number."""
    most = max(n for n in range(101) if n * n <= bound)
    found = ask("solve((n) => n * n, input, 'most', (r) => r <= bound)", input=INPUT, bound=bound)
    assert found == {"value": most, "edge": False}


def test_the_least_and_a_result_that_is_refused_below_it(ask: Ask) -> None:
    found = ask("solve((n) => (n < 3 ? undefined : n), input, 'least', (r) => r <= 50)", input=INPUT)
    assert found == {"value": 3, "edge": False}


def test_a_hump_does_not_hide_the_far_side(ask: Ask) -> None:
    """(n - 50)^2 stays above 400 up to 30 and from 70 on; the most is the end of the range."""
    assert ask("solve((n) => (n - 50) ** 2, input, 'most', (r) => r >= 400)", input=INPUT) == {
        "value": 100,
        "edge": True,
    }
    assert ask("solve((n) => (n - 50) ** 2, input, 'least', (r) => r <= 400)", input=INPUT) == {
        "value": 30,
        "edge": False,
    }


def test_no_value_and_every_value(ask: Ask) -> None:
    assert ask("solve((n) => n, input, 'most', (r) => r < 0)", input=INPUT) is None
    assert ask("solve((n) => n, input, 'most', (r) => r < 1000)", input=INPUT) == {"value": 100, "edge": True}


def test_halving_comes_close(ask: Ask) -> None:
    found = ask("solve((x) => x * x, input, 'most', (r) => r <= 2)", input=LOOSE)
    assert found["value"] == pytest.approx(1.4142135623730951, rel=1e-12)


def test_weights_are_sorted_by_their_swing(ask: Ask) -> None:
    """y = 5 a - b, moved by a tenth of ranges of 10 and 100: a gives 5, b gives 10, c nothing."""
    inputs = {"a": LOOSE, "b": INPUT, "c": LOOSE}
    script = "weigh(inputs, now, 0.1, (id) => (v) => { const s = { ...now, [id]: v }; return 5 * s.a - s.b; }, -25)"
    found = ask(script, inputs=inputs, now={"a": 5, "b": 50, "c": 5})
    assert [(each["id"], each["from"], each["to"], each["swing"]) for each in found] == [
        ("b", 40, 60, 10),
        ("a", 4, 6, 5),
    ]


@pytest.mark.parametrize(
    ("given", "result"),
    [
        ("birds", "day_end_time"),
        ("ice_on_hand", "ice_lasts_time"),
        ("tap_temperature", "ice_total"),
        ("chill_check_time", "chill_check_temperature"),
        ("scald_set_temperature", "scald_time_published"),
    ],
)
def test_a_part_of_the_day_is_that_of_the_whole(ask: Ask, workbook: Workbook, given: str, result: str) -> None:
    entry = workbook.givens.inputs[given]
    for share in (0.01, 0.3, 0.62, 1):
        value = entry.low + share * (entry.high - entry.low)
        value = round(value) if entry.whole else value
        part = ask("along(all, settle({}), given, result)(value) ?? null", given=given, result=result, value=value)
        day = workbook.compute({**workbook.settler.settle(workbook.plan, {}), given: value})
        assert part == (pytest.approx(day.values[result], rel=1e-12) if result in day.values else None)


def test_the_most_birds_by_the_clock_are_those_of_the_formula(ask: Ask, workbook: Workbook) -> None:
    """Content turns the same arithmetic round by hand, with the light for a bound; both find the same number."""
    settings = {**workbook.settler.settle(workbook.plan, {}), "dark_time": 12 * 3600.0}
    script = "solve(along(all, settings, 'birds', 'day_end_time'), inputs.birds, 'most', (r) => r <= 43200 + 1e-6)"
    found = ask(script, settings=settings)
    assert found["value"] == workbook.compute(settings).values["birds_most_clock"]
