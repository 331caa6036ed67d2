"""Each warning of the line, the crew and the law at its edge: quiet on one side, shown on the other."""

from __future__ import annotations

import pytest

from tests.checks.conftest import CONTENT, Bench

EDGES: dict[str, tuple[dict[str, str], dict[str, str]]] = {
    "bleed_wait_short": ({"bleed_time": "90 s"}, {"bleed_time": "89 s"}),
    "feed_off_too_long": ({"feed_off_hours": "10 h"}, {"feed_off_hours": "11 h"}),
    "feed_off_too_short": ({"feed_off_hours": "8 h"}, {"feed_off_hours": "479 min"}),
    "gut_slow_in_heat": ({"air_temperature": "89.9 degF"}, {"air_temperature": "90 degF"}),
    "load_over_cones": ({"cones": "4", "scald_batch": "4 bird"}, {"cones": "3", "scald_batch": "4 bird"}),
    "helpers_over_crew": ({"crew": "6"}, {"crew": "5"}),
    "nobody_left_over": ({"crew": "7"}, {"crew": "6"}),
    "split_could_be_better": ({}, {"helpers_kill": "2", "helpers_evisceration": "2"}),
    "crates_short": ({"crates_on_hand": "8"}, {"crates_on_hand": "7"}),
    "noise_over_limit": ({"plucker_noise": "90 dBA"}, {"plucker_noise": "90.1 dBA"}),
    "yearly_limit_passed": (
        {"birds": "80 bird", "birds_already_this_year": "920 bird"},
        {"birds": "80 bird", "birds_already_this_year": "921 bird"},
    ),
    "daily_limit_passed": (
        {"rule_set": "south_africa", "birds": "50 bird"},
        {"rule_set": "south_africa", "birds": "51 bird"},
    ),
    "chill_hours_borrowed": ({"rule_set": "us_colorado"}, {"rule_set": "eu"}),
    "target_looser_than_rule": (
        {"rule_set": "eu", "chill_target_temperature": "4 degC"},
        {"rule_set": "eu", "chill_target_temperature": "40 degF"},
    ),
    "scald_outside_rule": (  # 64 °C at most, with the swing
        {"rule_set": "quebec", "scald_set_temperature": "61.2 degC", "scald_temperature_swing": "2.8 delta_degC"},
        {"rule_set": "quebec", "scald_set_temperature": "61.3 degC", "scald_temperature_swing": "2.8 delta_degC"},
    ),
    "weight_of_other_birds": (  # a turkey has some 8.5 kg
        {"species": "turkey", "live_mass": "4.25 kg/bird"},
        {"species": "turkey", "live_mass": "2.7 kg/bird"},
    ),
    "target_above_rule": ({"rule_set": "us_colorado"}, {"rule_set": "us_washington"}),
    "sanitizer_too_strong": ({"sanitizer_target": "200 mg/L"}, {"sanitizer_target": "201 mg/L"}),
    "sanitizer_too_weak": ({"sanitizer_target": "50 mg/L"}, {"sanitizer_target": "49 mg/L"}),
    "wash_water_scant": ({"wash_water_per_bird": "1.5 L/bird"}, {"wash_water_per_bird": "1.4 L/bird"}),
}
"""Plans just inside and just outside, on top of the defaults."""

TURNED = {
    "cones_short": ("cones_needed", "cones", "{:.0f}", -1),
    "day_ends_dark": ("day_end_time", "dark_time", "{:.3f} s", -60),
    "day_begins_dark": ("burner_light_time", "light_time", "{:.3f} s", 60),
    "birds_over_day": ("birds_most", "birds", "{:.0f} bird", 1),
}
"""Where the edge is itself a result: the result, the input set to it, how it is written, and the step over the edge."""
ROUNDED = {"dark_time": 0.001, "light_time": -0.001}
"""What writing a time may have moved it over the edge, taken back."""


@pytest.mark.parametrize("watch", EDGES)
def test_edge(bench: Bench, watch: str) -> None:
    inside, outside = EDGES[watch]
    assert watch not in bench.run(inside).alerts
    assert watch in bench.run(outside).alerts


@pytest.mark.parametrize("watch", TURNED)
def test_edge_that_is_a_result(bench: Bench, watch: str) -> None:
    result, given, form, step = TURNED[watch]
    start = {"ice_on_hand": "2000 lb", "crates_on_hand": "20", "feed_off_hours": "4 h"}
    start |= {"evisceration_time": "90 s/bird", "finishing_time": "0 s/bird", "bleed_time": "4 min"}
    edge = bench.day(start)[result]
    assert watch not in bench.run(start | {given: form.format(edge + ROUNDED.get(given, 0))}).alerts
    assert watch in bench.run(start | {given: form.format(edge + step)}).alerts


def test_cones_are_not_blamed_for_a_slow_table(bench: Bench) -> None:
    """With two at the gutting table birds wait there, and a fourth cone would bring nothing."""
    slow = {"helpers_evisceration": "2", "cones": "3"}
    few, more = bench.run(slow), bench.run(slow | {"cones": "8"})
    assert few.values["line_rate"] == more.values["line_rate"]
    assert "cones_short" not in few.alerts


@pytest.mark.parametrize("species", ["turkey", "goose"])
def test_large_birds_wait_longer(bench: Bench, species: str) -> None:
    assert "bleed_wait_short" not in bench.run({"species": species, "bleed_time": "120 s"}).alerts
    assert "bleed_wait_short" in bench.run({"species": species, "bleed_time": "119 s"}).alerts


def test_heat_on_crated_birds_at_both_limits(bench: Bench) -> None:
    damp = {"relative_humidity": "100 percent", "crate_air_speed": "1 m/s"}
    for air, shown in (
        ("30.5", ""),
        ("30.7", "crated_birds_hot"),
        ("34.4", "crated_birds_hot"),
        ("34.5", "crated_birds_deadly"),
    ):
        alerts = bench.run(damp | {"air_temperature": f"{air} degC"}).alerts
        assert [watch for watch in alerts if watch.startswith("crated_birds")] == ([shown] if shown else [])


def test_crate_too_heavy_at_its_edge(bench: Bench) -> None:
    limit = bench.day({})["lifting_limit_mass"]
    full = bench.day({"crate_empty_mass": "1 kg"})["crate_full_mass"] - 1
    assert "crate_heavy" not in bench.run({"crate_empty_mass": f"{2 * limit - full - 0.001} kg"}).alerts
    assert "crate_heavy" in bench.run({"crate_empty_mass": f"{2 * limit - full + 0.001} kg"}).alerts


def test_warm_birds_at_the_edge(bench: Bench) -> None:
    slow = {"evisceration_time": "1200 s/bird", "finishing_time": "900 s/bird", "wash_time": "600 s/bird"}
    slow |= {"scald_handling_time": "240 s", "scald_batch": "1 bird", "bleed_time": "30 s"}
    edge = 3600 - bench.day(slow)["longest_warm_time"] + 30
    assert "warm_birds_wait" not in bench.run(slow | {"bleed_time": f"{edge - 0.001} s"}).alerts
    assert "warm_birds_wait" in bench.run(slow | {"bleed_time": f"{edge + 0.001} s"}).alerts


def test_waiting_hens(bench: Bench) -> None:
    hens = {"species": "stewing_hen", "break_time": "0 s"}
    assert "hens_wait_long" not in bench.run(hens | {"birds": "50 bird"}).alerts
    assert "hens_wait_long" in bench.run(hens | {"birds": "70 bird"}).alerts
    assert "hens_wait_long" not in bench.run({"birds": "70 bird", "break_time": "0 s"}).alerts


def test_every_watch_of_these_files_has_an_edge(bench: Bench) -> None:
    watches = {
        line.split(":")[0]
        for file in ("line.yml", "law.yml")
        for line in (CONTENT / "shared" / "watches" / file).read_text(encoding="utf-8").splitlines()
        if line[:1].isalpha()
    }
    tried_by_name = {"crated_birds_hot", "crated_birds_deadly", "crate_heavy", "warm_birds_wait", "hens_wait_long"}
    assert watches == EDGES.keys() | TURNED.keys() | tried_by_name


def test_usual_day_of_every_rule_set_stops_nothing(bench: Bench) -> None:
    for rules in bench.workbook.library.choices["rule_set"].options:
        alerts = bench.run({"rule_set": rules, "birds": "50 bird"}).alerts
        assert not [watch for watch in alerts if bench.workbook.library.watches[watch].stop], rules
