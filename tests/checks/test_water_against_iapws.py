"""Water and its vapour over the whole range of a scalder, against the reference program for IAPWS-IF97."""

from __future__ import annotations

import pytest
from iapws import IAPWS97

from tests.checks.conftest import Bench

CELSIUS = [1, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70]


def _at(celsius: float) -> dict[str, str]:
    return {"scald_fill_temperature": f"{celsius} degC"}


def _saturated(celsius: float, vapour: int) -> IAPWS97:
    return IAPWS97(T=celsius + 273.15, x=vapour)


@pytest.mark.parametrize("celsius", CELSIUS)
def test_vapour_pressure(bench: Bench, celsius: float) -> None:
    reference = _saturated(celsius, 0).P * 1e6
    assert bench.day(_at(celsius))["probe_vapour_pressure"] == pytest.approx(reference, rel=0.0015)


@pytest.mark.parametrize("celsius", CELSIUS)
def test_heat_of_evaporation(bench: Bench, celsius: float) -> None:
    reference = (_saturated(celsius, 1).h - _saturated(celsius, 0).h) * 1e3
    assert bench.day(_at(celsius))["probe_vaporisation_heat"] == pytest.approx(reference, rel=0.002)


@pytest.mark.parametrize("celsius", CELSIUS)
def test_density_of_water(bench: Bench, celsius: float) -> None:
    reference = IAPWS97(T=celsius + 273.15, P=0.101325).rho
    assert bench.day(_at(celsius))["probe_water_density"] == pytest.approx(reference, rel=0.003)


@pytest.mark.parametrize("celsius", CELSIUS)
def test_specific_heat_of_water(bench: Bench, celsius: float) -> None:
    """A parabola made for food; below 20 °C it is poorer, within 1 % at freezing."""
    reference = IAPWS97(T=celsius + 273.15, P=0.101325).cp * 1e3
    nearness = 0.0025 if celsius >= 20 else 0.01
    assert bench.day(_at(celsius))["probe_water_specific_heat"] == pytest.approx(reference, rel=nearness)
