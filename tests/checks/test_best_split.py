"""The best split of the crew against a search through every split."""

from __future__ import annotations

import itertools
import random

import pytest

from tests.checks.conftest import Bench
from tests.checks.narrow import narrow

PLACES = ("kill", "scald_pluck", "evisceration", "wash")


@pytest.fixture(scope="module")
def short_bench(bench: Bench) -> Bench:
    return Bench(narrow(bench.workbook, "line_rate", "line_rate_best", "crew_spare", "rate_whole"))


def _random_plan(chance: random.Random) -> dict[str, str]:
    return {
        "cones": f"{chance.randint(4, 16)}",
        "scald_batch": f"{chance.randint(1, 4)} bird",
        "pluck_batch": f"{chance.randint(1, 5)} bird",
        "kill_handling_time": f"{chance.uniform(10, 80)} s/bird",
        "bleed_time": f"{chance.uniform(60, 180)} s",
        "scald_time": f"{chance.uniform(20, 120)} s",
        "pluck_time": f"{chance.uniform(10, 40)} s",
        "evisceration_time": f"{chance.uniform(40, 400)} s/bird",
        "wash_time": f"{chance.uniform(10, 120)} s/bird",
        "evisceration_places": f"{chance.randint(1, 6)}",
        "wash_places": f"{chance.randint(1, 3)}",
    }


def _staff(split: tuple[float, ...]) -> dict[str, str]:
    return {f"helpers_{place}": f"{helpers}" for place, helpers in zip(PLACES, split, strict=True)}


@pytest.mark.parametrize("seed", range(20))
def test_split_equals_brute_force(short_bench: Bench, seed: int) -> None:
    chance = random.Random(seed)
    crew = chance.randint(4, 8)
    plan = _random_plan(chance) | {"crew": f"{crew}"}
    rates = {
        split: short_bench.day(plan | _staff(split), "line_rate")["line_rate"]
        for split in itertools.product(range(1, crew - 2), repeat=len(PLACES))
        if sum(split) <= crew
    }
    best = max(rates.values())
    day = short_bench.day(plan)
    whole = tuple(round(day[f"whole_helpers_{place}"]) for place in PLACES)
    assert day["rate_whole"] == pytest.approx(best, rel=1e-12)
    assert rates[whole] == pytest.approx(best, rel=1e-12)
    assert sum(whole) == min(sum(split) for split, rate in rates.items() if rate >= best * (1 - 1e-12))


@pytest.mark.parametrize("seed", range(20))
def test_half_people_only_where_the_line_is_faster_so(short_bench: Bench, seed: int) -> None:
    chance = random.Random(seed)
    crew = chance.randint(4, 8)
    plan = _random_plan(chance) | {"crew": f"{crew}"}
    day = short_bench.day(plan)
    suggested = tuple(day[f"suggested_helpers_{place}"] for place in PLACES)
    assert set(2 * people % 1 for people in suggested) == {0}
    assert day["crew_spare"] == pytest.approx(crew - sum(suggested), abs=1e-9)
    assert day["crew_spare"] >= -1e-9
    staffed = short_bench.day(plan | _staff(suggested), "line_rate")["line_rate"]
    assert day["line_rate_best"] == pytest.approx(staffed, rel=1e-12)
    assert day["line_rate_best"] >= day["rate_whole"]
    if any(people % 1 for people in suggested):
        assert day["line_rate_best"] > day["rate_whole"]


def test_no_split_in_halves_is_faster_where_cones_are_many(short_bench: Bench) -> None:
    """Each place then reaches its people over its work, up to what it carries; tried with every split in halves."""
    halves = [half / 2 for half in range(1, 7)]
    for crew in (4, 5, 6):
        plan = {"crew": f"{crew}", "cones": "40"}
        rates = [
            short_bench.day(plan | _staff(split), "line_rate")["line_rate"]
            for split in itertools.product(halves, repeat=len(PLACES))
            if sum(split) == crew
        ]
        assert short_bench.day(plan)["line_rate_best"] == pytest.approx(max(rates), rel=1e-12)


@pytest.mark.parametrize("crew", [1, 2, 3])
def test_too_few_people_share_all_by_the_work_there_is(short_bench: Bench, crew: int) -> None:
    """Nobody waits then, so the line gets as many birds as hands have time for."""
    plan = {"crew": f"{crew}", "cones": "40"}
    day = short_bench.day(plan)
    shared = tuple(day[f"suggested_helpers_{place}"] for place in PLACES)
    assert sum(shared) == pytest.approx(crew)
    work = sum(day[f"place_work_{place}"] for place in PLACES)
    assert day["line_rate_best"] == pytest.approx(crew / work, rel=1e-12)
    assert short_bench.day(plan | _staff(shared), "line_rate")["line_rate"] == pytest.approx(crew / work, rel=1e-12)
