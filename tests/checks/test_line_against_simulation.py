"""The line's formulas against an independent simulation of random lines."""

from __future__ import annotations

import random
import statistics
from dataclasses import fields, replace

import pytest

from tests.checks.conftest import Bench
from tests.checks.narrow import narrow
from tests.checks.simulated_line import Line, SimulatedLine
from tests.repeating import TIMES

LINES = 250 * TIMES
COUNTED = {"birds": "bird", "scald_batch": "bird", "pluck_batch": "bird"}
ONE_BIRD = ("kill_handling_time", "finishing_time", "evisceration_time", "wash_time")


@pytest.fixture(scope="module")
def short_bench(bench: Bench) -> Bench:
    wanted = ("line_rate", "line_time", "longest_warm_time", "last_kill_time", "cones_needed")
    return Bench(narrow(bench.workbook, *wanted))


def _random_line(chance: random.Random, helpers_kill: int) -> Line:
    return Line(
        birds=chance.randint(1, 150),
        cones=chance.randint(1, 16),
        scald_batch=chance.randint(1, 6),
        pluck_batch=chance.randint(1, 6),
        helpers_kill=helpers_kill,
        helpers_scald_pluck=chance.choice((1, 1, 2, 3)),
        helpers_evisceration=chance.randint(1, 6),
        helpers_wash=chance.randint(1, 3),
        evisceration_places=chance.randint(1, 6),
        wash_places=chance.randint(1, 3),
        kill_handling_time=chance.uniform(10, 60),
        bleed_time=chance.uniform(60, 180),
        scald_time=chance.uniform(20, 120),
        scald_handling_time=chance.uniform(5, 60),
        pluck_time=chance.uniform(10, 40),
        pluck_handling_time=chance.uniform(5, 40),
        finishing_time=chance.choice((0, chance.uniform(5, 100))),
        evisceration_time=chance.uniform(40, 400),
        wash_time=chance.uniform(10, 80),
    )


def _day(bench: Bench, line: Line) -> dict[str, float]:
    changes = {"break_time": "0 s"}
    for field in fields(Line):
        unit = COUNTED.get(field.name, "s/bird" if field.name in ONE_BIRD else "s" if "time" in field.name else "")
        changes[field.name] = f"{getattr(line, field.name)} {unit}".strip()
    return dict(bench.day(changes))


def _long_run_rate(line: Line) -> float:
    """Birds a second between bird 60 and bird 180, whole loads of every size apart."""
    ends = [max(SimulatedLine(replace(line, birds=birds)).run().finished) for birds in (60, 180)]
    return 120 / (ends[1] - ends[0])


@pytest.mark.parametrize("seed", range(30))
def test_rate_is_that_of_the_simulated_line(short_bench: Bench, seed: int) -> None:
    line = _random_line(random.Random(seed), helpers_kill=1)
    assert _day(short_bench, line)["line_rate"] == pytest.approx(_long_run_rate(line), rel=1e-6)


def test_rate_with_more_people_at_the_cones_is_never_too_high(short_bench: Bench) -> None:
    lines = [_random_line(random.Random(100 + seed), helpers_kill=2 + seed % 2) for seed in range(20)]
    shares = [_day(short_bench, line)["line_rate"] / _long_run_rate(line) for line in lines]
    assert max(shares) <= 1 + 1e-6
    assert min(shares) >= 0.6, "stated in the accuracy of line_rate"
    assert statistics.mean(shares) >= 0.97


def test_line_time_is_never_too_short_and_seldom_much_too_long(short_bench: Bench) -> None:
    ratios, last_cuts = [], []
    for seed in range(LINES):
        line = _random_line(random.Random(1000 + seed), helpers_kill=random.Random(seed).choice((1, 1, 1, 2, 3)))
        day, run = _day(short_bench, line), SimulatedLine(line).run()
        ratios.append(day["line_time"] / max(run.finished))
        last_cuts.append(day["last_kill_time"] - day["first_kill_time"] - max(run.cuts))
    assert min(ratios) >= 1 - 1e-9
    assert statistics.median(ratios) <= 1.005
    assert statistics.quantiles(ratios, n=20)[-1] <= 1.10
    assert min(last_cuts) >= -1e-6, "no bird is cut after the time that is told"


def test_no_bird_is_longer_on_its_way_than_is_told(short_bench: Bench) -> None:
    """Where birds are killed one by one at the pace of the line, as its list says: else they pile up without end."""
    ratios = []
    for seed in range(LINES):
        line = _random_line(random.Random(5000 + seed), helpers_kill=random.Random(seed).choice((1, 1, 1, 2, 3)))
        pace = 1 / _day(short_bench, line)["line_rate"]
        run = SimulatedLine(replace(line, helpers_kill=1, kill_handling_time=pace)).run()
        longest = max(end - cut for cut, end in zip(sorted(run.cuts), sorted(run.finished), strict=True))
        ratios.append(_day(short_bench, line)["longest_warm_time"] / longest)
    assert min(ratios) >= 0.95, "stated in the accuracy of longest_warm_time"
    assert statistics.median(ratios) <= 1.15


@pytest.mark.parametrize("seed", range(20))
def test_cones_needed_are_the_fewest_that_never_hold_up_the_line(short_bench: Bench, seed: int) -> None:
    line = replace(_random_line(random.Random(2000 + seed), helpers_kill=1), cones=16)
    day = _day(short_bench, line)
    needed, plenty = round(day["cones_needed"]), day["line_rate_without_cones"]
    enough = [
        cones
        for cones in range(line.scald_batch, 41)
        if _day(short_bench, replace(line, cones=cones))["line_rate"] >= plenty * (1 - 1e-9)
    ]
    assert needed == min(enough)
