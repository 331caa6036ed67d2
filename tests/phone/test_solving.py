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


MOVES = """((now, ranges, size) => {
  const y = (s) => (s.d > 4 ? undefined : 5 * s.a - s.b + 2 * s.d);
  const weights = weigh(ranges, (id) => (value) => y({ ...now, [id]: value }), y(now));
  return [weights.map(({ id, less, more, size }) => [id, less ?? null, more ?? null, size]), likely(weights, y(now))];
})(now, doubtful({ doubts, inputs }, now))"""


def test_what_matters_is_moved_by_its_doubts(ask: Ask) -> None:
    """y = 5 a - b + 2 d, refused where d is above 4; a may be off by 1, b by a tenth of it, d by 2, c does nothing.

    By hand: from -17 a moves y by 5 to either side; b, 50 with a range to 52, by +5 and -2; d only down by 4. Down
    5^2 + 2^2 + 4^2 = 45, up 5^2 + 5^2 = 50.
    """
    doubts = {"a": [1, False], "b": [0.1, True], "c": [1, False], "d": [2, False]}
    inputs = {"b": {"low": 0, "high": 52, "whole": False}}
    moves, sure = ask(MOVES, doubts=doubts, inputs=inputs, now={"a": 5, "b": 50, "c": 5, "d": 4})
    assert moves == [["a", -22, -12, 10], ["b", -12, -19, 7], ["d", -21, None, 4]]
    assert sure == {"low": pytest.approx(-17 - 45**0.5), "high": pytest.approx(-17 + 50**0.5)}


@pytest.mark.parametrize("result", ["day_end_time", "ice_total", "propane_mass", "chill_time", "line_rate"])
def test_what_matters_is_what_the_computer_says(ask: Ask, workbook: Workbook, result: str) -> None:
    """The same order and the same numbers as `numbers --why`, for a plan that is not the farm's own."""
    settings = {**workbook.settler.settle(workbook.plan, {}), "birds": 104.0, "chill_water_temperature": 274.15}
    script = """(({ values }, { needed }) => {
      const ranges = Object.entries(doubtful(all, settings)).filter(([id]) => needed.has(id));
      const weights = weigh(Object.fromEntries(ranges), (id) => along(all, settings, id, result), values[result]);
      return { weights, ...likely(weights, values[result]) };
    })(compute(settings), neededFor(all, [result]))"""
    found = ask(script, settings=settings, result=result)
    known = workbook.how_sure(settings, result)
    assert known and known.moves
    assert [each["id"] for each in found["weights"]] == [move.input for move in known.moves]
    for each, move in zip(found["weights"], known.moves, strict=True):
        assert [each.get("less"), each.get("more")] == pytest.approx([move.low, move.high], rel=1e-9)
    assert (found["low"], found["high"]) == pytest.approx((known.low, known.high), rel=1e-9)


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
