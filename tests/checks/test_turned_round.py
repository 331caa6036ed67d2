"""What is the same arithmetic turned round: tried against every number of birds."""

from __future__ import annotations

import random

import pytest

from tests.checks.conftest import Bench
from tests.checks.narrow import narrow
from tests.repeating import TIMES

MOST = 300


@pytest.fixture(scope="module")
def short_bench(bench: Bench) -> Bench:
    return Bench(narrow(bench.workbook, "ice_total", "ice_birds_limit", "birds_most_ice"))


def _random_plan(chance: random.Random) -> dict[str, str]:
    return {
        "birds": f"{chance.randint(1, MOST)} bird",
        "ice_on_hand": f"{chance.randint(20, 2200)} lb",
        "air_temperature": f"{chance.randint(20, 105)} degF",
        "tap_temperature": f"{chance.randint(45, 80)} degF",
        "tub_volume": f"{chance.choice((20, 30, 50, 100))} gal",
        "tub_wall_conductance": f"{chance.choice((1, 3, 10, 30))} W/K",
        "clean_down_time": f"{chance.choice((0, 60, 200))} min",
        "helpers_pack": f"{chance.choice((0.5, 1, 4))}",
        "evisceration_time": f"{chance.choice((60, 150, 400))} s/bird",
    }


@pytest.mark.parametrize("seed", range(6 * TIMES))
def test_ice_is_enough_for_so_many_and_not_for_one_more(short_bench: Bench, seed: int) -> None:
    plan = _random_plan(random.Random(seed))

    def enough(birds: int) -> bool:
        day = short_bench.day(plan | {"birds": f"{birds} bird"}, "ice_total")
        return day["ice_total"] <= day["ice_on_hand"] * (1 + 1e-9)

    limit = round(short_bench.day(plan, "ice_birds_limit")["ice_birds_limit"])
    fitting = 0
    while fitting < MOST and enough(fitting + 1):
        fitting += 1
    assert min(limit, MOST) == fitting


@pytest.mark.parametrize(("method", "tub"), [("air", "5 gal"), ("running_water", "50 gal")])
def test_where_no_ice_is_used_it_binds_nothing(bench: Bench, method: str, tub: str) -> None:
    run = bench.run({"chill_method": method, "birds": "400 bird", "crates_on_hand": "1", "tub_volume": tub})
    assert run.refused["ice_birds_limit"].input == "chill_method"
    assert run.values["day_bound_by"] == "crates"
    assert "birds_over_day" in run.alerts
