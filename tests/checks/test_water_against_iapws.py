"""Water and its vapour over the whole range of a scalder, against the reference program for IAPWS-IF97."""

from __future__ import annotations

from typing import Any

import pytest

from tests.checks.conftest import Bench

CELSIUS = [1, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70]


def _probed(bench: Bench, name: str, celsius: float) -> float:
    return bench.day({"scald_fill_temperature": f"{celsius} degC"}, f"probe_{name}")[f"probe_{name}"]


def _water(celsius: float, **known: float) -> Any:
    from iapws import IAPWS97  # takes a second to load, and only these tests need it

    return IAPWS97(T=celsius + 273.15, **known)


@pytest.mark.parametrize("celsius", CELSIUS)
def test_vapour_pressure(bench: Bench, celsius: float) -> None:
    reference = _water(celsius, x=0).P * 1e6
    assert _probed(bench, "vapour_pressure", celsius) == pytest.approx(reference, rel=0.0015)


@pytest.mark.parametrize("celsius", CELSIUS)
def test_heat_of_evaporation(bench: Bench, celsius: float) -> None:
    reference = (_water(celsius, x=1).h - _water(celsius, x=0).h) * 1e3
    assert _probed(bench, "vaporisation_heat", celsius) == pytest.approx(reference, rel=0.002)


@pytest.mark.parametrize("celsius", CELSIUS)
def test_density_of_water(bench: Bench, celsius: float) -> None:
    reference = _water(celsius, P=0.101325).rho
    assert _probed(bench, "water_density", celsius) == pytest.approx(reference, rel=0.003)


@pytest.mark.parametrize("celsius", CELSIUS)
def test_specific_heat_of_water(bench: Bench, celsius: float) -> None:
    """A parabola made for food; below 20 °C it is poorer, within 1 % at freezing."""
    reference = _water(celsius, P=0.101325).cp * 1e3
    nearness = 0.0025 if celsius >= 20 else 0.01
    assert _probed(bench, "water_specific_heat", celsius) == pytest.approx(reference, rel=nearness)


def test_heat_to_melt_ice(bench: Bench) -> None:
    """IAPWS R10-06 for the ice and IAPWS-95 for the water, both of 0 °C."""
    from iapws import IAPWS95
    from iapws._iapws import _Ice

    reference = (IAPWS95(T=273.15, P=0.101325).h - _Ice(273.15, 0.101325)["h"]) * 1e3
    assert bench.day({})["ice_latent_heat"] == pytest.approx(reference, rel=0.001)


@pytest.mark.parametrize(("comes", "bath"), [(1, 2), (1, 4), (3, 4)])
def test_running_water_carries_off_all_heat(bench: Bench, comes: float, bath: float) -> None:
    """What runs through warms from tap to bath by all the heat that birds and leaks bring: its gain of enthalpy."""
    plan = {
        "chill_method": "running_water",
        "tap_temperature": f"{comes} degC",
        "chill_water_temperature": f"{bath} degC",
    }
    day = bench.day(plan)
    brought = day["heat_to_remove"] + day["heat_after_target"] + day["tub_leak_power"] * day["chill_hold_time"]
    cold, warm = (_water(celsius, P=0.101325) for celsius in (comes, bath))
    carried = day["birds"] * day["chill_flow"] * cold.rho * (warm.h - cold.h) * 1e3
    assert carried == pytest.approx(brought, rel=0.012)  # the parabola of its specific heat is within 1 % this cold
    assert day["water_chill"] >= day["birds"] * day["chill_flow"]
