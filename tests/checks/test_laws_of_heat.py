"""What must hold whatever the plan: more birds never need less ice, colder air never gives more gas, and their like."""

from __future__ import annotations

import math

from hypothesis import given
from hypothesis import strategies as st

from tests.checks.conftest import Bench

birds = st.integers(1, 400)
kilograms = st.floats(0.5, 15)
celsius_air = st.floats(-17, 45)
NEAR = 1e-9


def _never_falls(bench: Bench, less: dict[str, str], more: dict[str, str], *quantities: str) -> None:
    low, high = bench.day(less, *quantities), bench.day(more, *quantities)
    for quantity in quantities:
        if quantity in low and quantity in high:
            assert high[quantity] >= low[quantity] - NEAR * abs(low[quantity]), quantity


@given(birds, birds, kilograms)
def test_more_birds_never_need_less_ice(bench: Bench, one: int, other: int, mass: float) -> None:
    few, many = sorted((one, other))
    same = {"live_mass": f"{mass:.6f} kg/bird"}
    amounts = ("ice_total", "ice_bags", "tubs_needed", "propane_mass", "heat_to_remove")
    _never_falls(bench, {"birds": f"{few} bird", **same}, {"birds": f"{many} bird", **same}, *amounts)


@given(kilograms, kilograms, st.floats(5, 1000))
def test_heavier_bird_never_chills_sooner(bench: Bench, one: float, other: float, film: float) -> None:
    light, heavy = sorted((one, other))
    same = {"chill_heat_transfer": f"{film:.6f} W/m2/K"}
    _never_falls(
        bench,
        {"live_mass": f"{light:.6f} kg/bird", **same},
        {"live_mass": f"{heavy:.6f} kg/bird", **same},
        "chill_time",
    )


@given(st.floats(5, 1000), st.floats(5, 1000), kilograms)
def test_stirring_never_slows_the_chill(bench: Bench, one: float, other: float, mass: float) -> None:
    still, stirred = sorted((one, other))
    same = {"live_mass": f"{mass:.6f} kg/bird"}
    more = {"chill_heat_transfer": f"{still:.6f} W/m2/K", **same}
    _never_falls(bench, {"chill_heat_transfer": f"{stirred:.6f} W/m2/K", **same}, more, "chill_time")


@given(celsius_air, celsius_air, st.integers(5, 100), st.floats(5, 420), st.integers(1, 12))
def test_colder_air_never_gives_more_gas(
    bench: Bench, one: float, other: float, fill: int, pounds: float, cylinders: int
) -> None:
    cold, warm = sorted((one, other))
    same = {
        "cylinder_fill": f"{fill} percent",
        "cylinder_propane_mass": f"{pounds:.6f} lb",
        "cylinders": f"{cylinders}",
    }
    more = {"air_temperature": f"{warm:.6f} degC", **same}
    _never_falls(bench, {"air_temperature": f"{cold:.6f} degC", **same}, more, "cylinder_draw_limit")


@given(st.integers(5, 100), st.integers(5, 100), celsius_air)
def test_emptier_cylinder_never_gives_more_gas(bench: Bench, one: int, other: int, air: float) -> None:
    low, full = sorted((one, other))
    same = {"air_temperature": f"{air:.6f} degC"}
    more = {"cylinder_fill": f"{full} percent", **same}
    _never_falls(bench, {"cylinder_fill": f"{low} percent", **same}, more, "cylinder_draw_limit")


@given(st.floats(33, 160), st.floats(33, 160), st.floats(115, 180), st.floats(0, 8))
def test_warmer_fill_never_takes_longer(bench: Bench, one: float, other: float, setting: float, wind: float) -> None:
    cool, warm = sorted((one, other))
    same = {"scald_set_temperature": f"{setting:.6f} degF", "wind_speed": f"{wind:.6f} m/s"}
    shorter, longer = ({"scald_fill_temperature": f"{fill:.6f} degF", **same} for fill in (warm, cool))
    _never_falls(bench, shorter, longer, "scald_heat_up_heat", "scald_heat_up_time")


@given(st.floats(0, 11), st.floats(0, 11), st.floats(5, 100))
def test_wind_never_helps(bench: Bench, one: float, other: float, humidity: float) -> None:
    calm, windy = sorted((one, other))
    same = {"relative_humidity": f"{humidity:.6f} percent"}
    losses = ("scald_evaporation_loss", "scald_surface_loss", "scald_heat_up_time", "scald_makeup_volume")
    less, more = ({"wind_speed": f"{speed:.6f} m/s", **same} for speed in (calm, windy))
    _never_falls(bench, less, more, *losses)


@given(st.floats(0, 3000), st.floats(0, 3000))
def test_boiling_point_falls_with_altitude(bench: Bench, one: float, other: float) -> None:
    low, high = sorted((one, other))
    _never_falls(bench, {"altitude": f"{high:.6f} m"}, {"altitude": f"{low:.6f} m"}, "boiling_point")


@given(birds, st.floats(1, 100), st.floats(0, 100))
def test_bags_cover_the_ice_and_no_bag_is_spare(bench: Bench, count: int, bag: float, margin: float) -> None:
    plan = {"birds": f"{count} bird", "ice_bag_mass": f"{bag:.6f} lb", "ice_margin": f"{margin:.6f} percent"}
    day = bench.day(plan, "ice_bags")
    bag_mass = day["ice_bag_mass"]
    assert day["ice_bags"] * bag_mass >= day["ice_total"] * (1 - 1e-8)
    assert (day["ice_bags"] - 1) * bag_mass < day["ice_total"]


@given(st.floats(46.2, 82), st.floats(1, 70), st.floats(-17, 45))
def test_fahrenheit_kelvin_and_celsius_agree(bench: Bench, setting: float, fill: float, air: float) -> None:
    celsius = {"scald_set_temperature": setting, "scald_fill_temperature": fill, "air_temperature": air}
    days = [
        bench.day({name: f"{value:.9f} degC" for name, value in celsius.items()}),
        bench.day({name: f"{value + 273.15:.9f} K" for name, value in celsius.items()}),
        bench.day({name: f"{value * 1.8 + 32:.9f} degF" for name, value in celsius.items()}),
    ]
    for name, value in days[0].items():
        for day in days[1:]:
            assert math.isclose(day[name], value, rel_tol=1e-6, abs_tol=1e-5), name


@given(st.integers(0, 120))
def test_gas_for_every_minute_that_the_scald_is_hot(bench: Bench, minutes: int) -> None:
    """Who lights earlier burns what the water loses in that time, at the burner's share of heat."""
    soon, early = (bench.day({"burner_margin_time": f"{each} min"}) for each in (0, minutes))
    lost = (early["scald_surface_loss"] + early["scald_wall_loss"]) * minutes * 60
    burnt = (early["propane_mass"] - soon["propane_mass"]) * early["propane_heat"] * early["burner_efficiency"]
    assert math.isclose(burnt, lost, rel_tol=1e-6, abs_tol=1e-3)
    assert math.isclose(soon["burner_light_time"] - early["burner_light_time"], minutes * 60, abs_tol=1e-6)
