"""What goes in comes out, and rules hold at their very edge: conservation of mass, and sentences of the law."""

from __future__ import annotations

import pytest

from tests.checks.conftest import Bench

PARTS = ("blood_mass", "feather_mass", "offal_mass", "giblet_mass", "feet_mass")


@pytest.mark.parametrize(
    ("species", "dressed"),
    [("broiler", 0.75), ("stewing_hen", 0.68), ("duck", 0.70), ("goose", 0.70)],
)
def test_a_bird_is_the_sum_of_its_parts(bench: Bench, species: str, dressed: float) -> None:
    """Dressed shares: Mercia, Table 15 as Ussery quotes it. Conservation of mass; the neck is the part not told."""
    day = bench.day({"species": species, "dressing_fraction": f"{dressed}"})
    neck = day["neck_share"] * day["live_mass_total"]
    together = sum(day[part] for part in PARTS) + day["carcass_mass_total"] + neck
    assert together == pytest.approx(day["live_mass_total"], rel=1e-9)


@pytest.mark.parametrize("species", ["broiler", "turkey"])
def test_offal_is_never_less_than_was_weighed_on_broilers(bench: Bench, species: str) -> None:
    """Head 24.23 % of 10.32 %, guts 42.21 % of 14.45 % of live weight: the broiler parts paper of 2020."""
    day = bench.day({"species": species, "dressing_fraction": "0.8"})
    weighed = round(0.2423 * 0.1032, 3) + round(0.4221 * 0.1445, 3)
    assert day["offal_mass"] / day["live_mass_total"] == pytest.approx(weighed, abs=1e-9)


@pytest.mark.parametrize("species", ["broiler", "turkey"])
def test_melted_ice_runs_off_with_the_water(bench: Bench, species: str) -> None:
    day = bench.day({"species": species, "tap_temperature": "4 degC"})
    # 1 kg of ice becomes 1 kg of water; that has 999.98 kg/m3 at 4 °C (IAPWS-IF97)
    assert day["waste_water_volume"] - day["water_total"] == pytest.approx(day["ice_total"] / 999.98, rel=5e-3)


@pytest.mark.parametrize("days", ["1 day", "14 day", "60 day", "365 day"])
def test_a_first_bin_holds_what_one_day_brings(bench: Bench, days: str) -> None:
    day = bench.day({"days_between": days})
    assert day["compost_first_volume"] >= day["compost_pile_volume"]
    assert day["compost_bin_by_weight"] >= day["compost_pile_volume"]


@pytest.mark.parametrize(
    ("mass", "share", "hours"),
    [("5 lb/bird", "0.8", 6), ("8 lb/bird", "0.5", 6), ("16 lb/bird", "0.5", 6), ("16.1 lb/bird", "0.5", 8),
     ("4.99 lb/bird", "0.8", 4)],
)  # fmt: skip
def test_hours_to_chill_at_the_edges_of_weight(bench: Bench, mass: str, share: str, hours: int) -> None:
    """Under 4 lb 4 h, from 4 to 8 lb 6 h, over 8 lb 8 h: 6 CCR 1202-16-3, Part 3, 3.9 and 3.10."""
    day = bench.day({"live_mass": mass, "dressing_fraction": share, "rule_set": "us_colorado"})
    assert day["chill_limit_time"] == hours * 3600


def test_hours_from_slaughter_hold_the_way_to_the_tub(bench: Bench) -> None:
    """Within 4 h of slaughter: WAC 16-170-175 (1)."""
    day = bench.day({"rule_set": "us_washington"})
    assert day["chill_margin"] == pytest.approx(4 * 3600 - day["chill_time"] - day["longest_warm_time"])
    others = (min(day["dunk_load"], day["birds"]) - 1) / day["line_rate"]
    assert day["longest_warm_time"] == pytest.approx(day["line_fill_time"] + others), (
        "the last of a load waits for them"
    )


def test_no_more_birds_are_dunked_than_hang(bench: Bench) -> None:
    four, many = (bench.day({"cones": "4", "scald_batch": f"{load} bird"}) for load in (4, 12))
    for name in ("scald_batch_heat", "scald_batch_drop", "scald_recovery_time", "dunk_load_mass"):
        assert many[name] == four[name]


def test_water_filled_hotter_than_the_thermostat_is_what_birds_meet(bench: Bench) -> None:
    run = bench.run({"scald_fill_temperature": "160 degF"})
    assert run.values["scald_hottest"] == pytest.approx((160 + 459.67) * 5 / 9)
    assert "scald_swing_above_window" in run.alerts


@pytest.mark.parametrize("cones", [1, 2, 3, 5])
def test_four_more_cones_save_what_a_line_with_them_takes_less(bench: Bench, cones: int) -> None:
    few, many = (bench.day({"cones": f"{count}"}, "time_saved_by_cones", "line_rate") for count in (cones, cones + 4))
    gap = (few["birds"] - 1) / few["line_rate"] - (many["birds"] - 1) / many["line_rate"]
    assert few["time_saved_by_cones"] == pytest.approx(gap)


def test_cones_needed_do_not_depend_on_how_many_there_are(bench: Bench) -> None:
    assert len({bench.day({"cones": f"{count}"}, "cones_needed")["cones_needed"] for count in (1, 2, 3, 8, 20)}) == 1


def test_small_stock_takes_two_labels_a_bag(bench: Bench) -> None:
    """60 birds and 7.5 bags of giblets, so 8, and a tenth to spare: 68 times 1.1, and twice that, made whole."""
    plan = {"birds": "60 bird", "giblets_kept": "1", "giblet_bag_birds": "8 bird", "bag_spare_share": "0.1"}
    assert bench.day(plan)["labels_needed"] == 75
    assert bench.day(plan | {"labels_a_bag": "2"})["labels_needed"] == 150
