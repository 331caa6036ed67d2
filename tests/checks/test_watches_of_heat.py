"""Every stop and warning about heat, gas, ice and chilling, at its edge from both sides, by both hands."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
import yaml

from tests.checks.conftest import CONTENT, Bench
from tests.formula.phone_machine import HANDS, Hand

Changes = Mapping[str, str]
SMALL = {"cylinder_propane_mass": "20 lb", "air_temperature": "60 degF", "scald_set_temperature": "137 degF"}
EDGES: dict[str, tuple[Changes, Changes]] = {
    "scald_set_above_window": (
        {"scald_set_temperature": "151 degF"},
        {"scald_set_temperature": "151.1 degF"},
    ),
    "scald_swing_above_window": (
        {"scald_set_temperature": "146 degF", "scald_temperature_swing": "4.99 delta_degF"},
        {"scald_set_temperature": "146 degF", "scald_temperature_swing": "5.01 delta_degF"},
    ),
    "scald_set_below_window": (
        {"scald_set_temperature": "130 degF", "scald_temperature_swing": "1.99 delta_degF"},
        {"scald_set_temperature": "130 degF", "scald_temperature_swing": "2.01 delta_degF"},
    ),
    "scald_time_short": (
        {"scald_time": "15 s", "scald_temperature_swing": "7 delta_degF"},
        {"scald_time": "15 s", "scald_temperature_swing": "7.2 delta_degF"},
    ),
    "burner_too_high": ({"altitude": "2000 ft"}, {"altitude": "2250 ft"}),
    "cylinder_too_small": (
        {"burner_power": "277000 Btu/h", "air_temperature": "60 degF"},
        {"burner_power": "277100 Btu/h", "air_temperature": "60 degF"},
    ),
    "bath_not_cold_enough": (
        {"chill_water_temperature": "39.99 degF"},
        {"chill_water_temperature": "40 degF"},
    ),
    "bath_too_warm": (
        {"chill_water_temperature": "4 degC"},
        {"chill_water_temperature": "4.01 degC"},
    ),
    "bath_under_freezing": (
        {"chill_water_temperature": "0 degC"},
        {"chill_water_temperature": "-0.02 degC"},
    ),
    "bath_warm_running": (
        {"chill_method": "running_water", "tap_temperature": "1.99 degC"},
        {"chill_method": "running_water", "tap_temperature": "2 degC"},
    ),
    "running_water_much": (  # 15 K carry off in 2.5 L what a bird of this weight brings; so near a target they never do
        {"chill_method": "slush_still", "tap_temperature": "1 degC"},
        {"chill_method": "running_water", "tap_temperature": "1 degC"},
    ),
}
"""Watch to the plan that just does not call it and the plan that just does."""
SEARCHED: dict[str, tuple[str, str, float, float, Changes]] = {
    "burner_cannot_reach": ("burner_power", "Btu/h", 400000, 5000, {}),
    "scald_losses_half": ("burner_power", "Btu/h", 400000, 33000, {}),
    "scald_behind_line": ("burner_power", "Btu/h", 400000, 33000, {}),
    "scald_boils": (
        "scald_temperature_swing",
        "delta_degF",
        5,
        20,
        {"scald_set_temperature": "180 degF", "altitude": "10000 ft"},
    ),
    "cylinder_fades": ("burner_power", "Btu/h", 40000, 90000, SMALL),
    "cylinder_runs_dry": ("cylinder_propane_mass", "lb", 100, 5, {"air_temperature": "90 degF"}),
    "cylinder_reserve_low": ("cylinder_reserve", "percent", 0, 60, {"cylinder_propane_mass": "20 lb"}),
    "cylinder_fades_late": ("cylinder_propane_mass", "lb", 100, 17, {"air_temperature": "20 degF"}),
    "chill_too_slow": ("chill_heat_transfer", "W/m2/K", 100, 8, {"chill_method": "air"}),
    "chill_slow_from_kill": ("chill_heat_transfer", "W/m2/K", 100, 10, {"chill_method": "air"}),
    "chill_over_from_kill": (
        "chill_heat_transfer",
        "W/m2/K",
        100,
        12,
        {"chill_method": "air", "rule_set": "us_washington"},
    ),
    "ice_short": ("ice_on_hand", "lb", 2000, 0, {}),
    "ice_gone_early": ("ice_on_hand", "lb", 2000, 0, {}),
}
"""Watch to the input that calls it: unit, a value that does not, a value that does, and the rest of the plan."""
MARGINS = {
    "chill_too_slow": "chill_margin",
    "chill_slow_from_kill": "chill_margin_from_kill",
    "chill_over_from_kill": "chill_margin",
}


def test_every_watch_is_here() -> None:
    watches = yaml.load((CONTENT / "shared" / "watches" / "heat.yml").read_text(encoding="utf-8"), yaml.CSafeLoader)
    assert set(watches) == {*EDGES, *SEARCHED}


@pytest.mark.parametrize("hand", HANDS)
@pytest.mark.parametrize("watch", EDGES)
def test_at_its_edge(bench: Bench, watch: str, hand: Hand) -> None:
    quiet, called = EDGES[watch]
    assert watch not in bench.by(hand, quiet)["alerts"]
    assert watch in bench.by(hand, called)["alerts"]


@pytest.mark.parametrize("hand", HANDS)
@pytest.mark.parametrize("watch", SEARCHED)
def test_changes_once_between(bench: Bench, watch: str, hand: Hand) -> None:
    """The edge lies where a computed number crosses another: it is searched, and called on one side only."""
    name, unit, quiet, called, rest = SEARCHED[watch]

    def alerts(value: float) -> bool:
        return watch in bench.by(hand, {**rest, name: f"{value:.9f} {unit}"})["alerts"]

    assert not alerts(quiet)
    assert alerts(called)
    while abs(quiet - called) > 1e-6 * max(abs(quiet), 1):
        middle = (quiet + called) / 2
        quiet, called = (quiet, middle) if alerts(middle) else (middle, called)
    if watch == "burner_cannot_reach":  # before that, the water comes to heat, but only in half a day
        day = bench.day({**rest, name: f"{quiet:.9f} {unit}"})
        assert day["scald_net_power"] == pytest.approx(day["burner_heat_to_water"] / 200, rel=1e-3)
    if watch in MARGINS:
        day = bench.day({**rest, name: f"{quiet:.9f} {unit}"})
        assert day[MARGINS[watch]] == pytest.approx(0, abs=0.1)
