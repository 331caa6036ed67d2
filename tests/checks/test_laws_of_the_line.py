"""What must hold of every line and every day, whatever the plan."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.checks.conftest import Bench

ORDER = ("feed_off_time", "burner_light_time", "first_dunk_time", "line_end_time", "pack_start_time", "pack_done_time",
         "day_end_time")  # fmt: skip
PLACES = ("kill", "scald_pluck", "evisceration", "wash")
CLOCK = ("line_time", "last_kill_time", "line_end_time", "last_chill_out_time", "pack_done_time", "day_end_time")
AMOUNTS = ("crates_needed", "water_total", "waste_mass", "bags_needed", "labels_needed", "freezer_volume")
SPECIES = ("broiler", "stewing_hen", "turkey", "duck", "goose")
NEAR = 1e-9

birds = st.integers(1, 400)
helpers = st.integers(1, 10)
loads = st.integers(1, 8)
seconds = st.integers(10, 300)


@given(st.tuples(helpers, helpers, helpers, helpers), st.sampled_from(PLACES), st.integers(1, 16), loads)
def test_one_more_helper_never_slows_the_line(
    bench: Bench, staff: tuple[int, ...], place: str, cones: int, load: int
) -> None:
    plan = {f"helpers_{each}": f"{n}" for each, n in zip(PLACES, staff, strict=True)}
    plan |= {"cones": f"{cones}", "scald_batch": f"{load} bird"}
    more = plan | {f"helpers_{place}": f"{staff[PLACES.index(place)] + 1}"}
    few, many = (bench.day(each, "line_rate", "line_time") for each in (plan, more))
    assert many["line_rate"] >= few["line_rate"] * (1 - NEAR)
    assert many["line_time"] <= few["line_time"] * (1 + NEAR)


@given(st.integers(1, 39), loads, seconds, st.integers(30, 600), helpers)
def test_one_more_cone_never_slows_the_line(
    bench: Bench, cones: int, load: int, handling: int, wait: int, killers: int
) -> None:
    load = min(load, cones)
    plan = {"scald_batch": f"{load} bird", "kill_handling_time": f"{handling} s/bird", "bleed_time": f"{wait} s"}
    plan["helpers_kill"] = f"{killers}"
    few, many = (bench.day(plan | {"cones": f"{n}"}, "rate_kill") for n in (cones, cones + 1))
    assert many["rate_kill"] >= few["rate_kill"] * (1 - NEAR)


@given(birds, birds, st.sampled_from(SPECIES))
def test_more_birds_never_end_the_day_sooner(bench: Bench, one: int, other: int, species: str) -> None:
    names = (*CLOCK, *AMOUNTS)
    few, many = (bench.day({"birds": f"{n} bird", "species": species}, *names) for n in sorted((one, other)))
    for name in names:
        assert many[name] >= few[name] - NEAR * abs(few[name]), name


@given(st.integers(1, 29))
def test_bigger_crew_never_has_a_slower_best_line(bench: Bench, crew: int) -> None:
    looked_at = ("line_rate_best", "line_rate_more_helper", *(f"suggested_helpers_{place}" for place in PLACES))
    small, large = (bench.day({"crew": f"{n}"}, *looked_at) for n in (crew, crew + 1))
    assert large["line_rate_best"] >= small["line_rate_best"] * (1 - NEAR)
    assert small["line_rate_more_helper"] == pytest.approx(large["line_rate_best"], rel=1e-12)
    assert sum(small[f"suggested_helpers_{place}"] for place in PLACES) <= crew + NEAR


@given(birds, st.integers(0, 4 * 3600), st.sampled_from(SPECIES))
def test_clock_runs_forward(bench: Bench, count: int, pause: int, species: str) -> None:
    plan = {"birds": f"{count} bird", "break_time": f"{pause} s", "species": species}
    day = bench.day(plan, *ORDER, "first_kill_time", "last_kill_time", "last_chill_out_time")
    for earlier, later in itertools.pairwise(ORDER):
        assert day[earlier] <= day[later] + 1e-6, (earlier, later)
    assert day["first_kill_time"] <= day["last_kill_time"] <= day["line_end_time"] <= day["last_chill_out_time"]


@given(st.integers(6 * 3600, 12 * 3600), st.integers(0, 3600), st.integers(0, 2 * 3600))
def test_most_birds_is_where_the_light_ends(bench: Bench, light: int, pause: int, cleaning: int) -> None:
    plan = {"first_kill_time": "6:00", "dark_time": f"{6 * 3600 + light} s"}
    plan |= {"break_time": f"{pause} s", "clean_down_time": f"{cleaning} s"}
    most = round(bench.day(plan, "birds_most_clock")["birds_most_clock"])
    if 4 <= most < 400:
        at, over = (bench.day(plan | {"birds": f"{n} bird"}, "day_end_time") for n in (most, most + 1))
        assert at["day_end_time"] <= at["dark_time"] + 1e-6
        assert over["day_end_time"] > over["dark_time"]


@given(birds, st.floats(0.3, 20), st.floats(0.2, 3))
def test_crates_keep_the_space_rule(bench: Bench, count: int, mass: float, area: float) -> None:
    run = bench.run({"birds": f"{count} bird", "live_mass": f"{mass} kg/bird", "crate_floor_area": f"{area} m2"})
    if "crates_needed" in run.refused:
        assert run.refused["crates_needed"].input == "crate_floor_area"
        return
    day = {name: value for name, value in run.values.items() if isinstance(value, int | float)}
    assert day["birds_per_crate"] * mass * day["crate_area_per_kg"] <= area * (1 + 1e-8)
    assert day["crates_needed"] * day["birds_per_crate"] >= count


@given(st.floats(1, 500), st.floats(10, 1000), st.floats(1, 15))
def test_bleach_dose_gives_the_strength(bench: Bench, volume: float, target: float, strength: float) -> None:
    plan = {"sanitizer_volume": f"{volume} L", "sanitizer_target": f"{target} mg/L"}
    plan["bleach_strength"] = f"{strength} percent"
    dose = bench.day(plan, "bleach_dose")["bleach_dose"] * 1000
    assert dose * strength / 100 * 1e6 / volume == pytest.approx(target, rel=1e-9)


def test_latest_start_ends_with_the_light(bench: Bench) -> None:
    latest = bench.day({})["latest_start_time"]
    day = bench.day({"first_kill_time": f"{latest} s"})
    assert day["day_end_time"] == pytest.approx(day["dark_time"], abs=1)


def test_prices_add_up_and_no_price_is_no_cost(bench: Bench) -> None:
    assert bench.run({}).refused["cost_per_bird"].input == "price_hour"
    day = bench.day({"birds": "50 bird", "price_live_bird": "4 dollar/bird", "price_bag": "0.5 dollar"})
    assert day["cost_per_bird"] == pytest.approx(4 + 0.5 * 55 / 50)
