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
    return Bench(narrow(bench.workbook, "line_rate", "line_rate_best", "crew_spare"))


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


def _staff(split: tuple[int, ...]) -> dict[str, str]:
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
    suggested = tuple(round(day[f"suggested_helpers_{place}"]) for place in PLACES)
    assert day["line_rate_best"] == pytest.approx(best, rel=1e-12)
    assert rates[suggested] == pytest.approx(best, rel=1e-12)
    assert sum(suggested) == min(sum(split) for split, rate in rates.items() if rate >= best * (1 - 1e-12))
    assert day["crew_spare"] == pytest.approx(crew - sum(suggested))


@pytest.mark.parametrize("crew", [1, 2, 3])
def test_too_few_people_share_every_place(short_bench: Bench, crew: int) -> None:
    day = short_bench.day({"crew": f"{crew}"})
    assert {day[f"suggested_helpers_{place}"] for place in PLACES} == {crew / 4}
    shared = {f"helpers_{place}": f"{crew / 4}" for place in PLACES}
    assert day["line_rate_best"] == pytest.approx(short_bench.day({"crew": f"{crew}"} | shared)["line_rate"], rel=1e-12)
