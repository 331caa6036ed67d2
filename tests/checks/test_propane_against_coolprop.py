"""The gas in a cylinder over all the weather the plan takes, against the reference equation as CoolProp computes it."""

from __future__ import annotations

from typing import Any

import pytest

from tests.checks.conftest import Bench
from tests.formula.phone_machine import HANDS, Hand

FAHRENHEIT = range(0, 116, 5)
ATMOSPHERE = 101_325.0


def _propane(*asked: Any) -> float:
    from CoolProp.CoolProp import PropsSI  # takes seconds to load, and only these tests need it

    return float(PropsSI(*asked, "Propane"))


@pytest.mark.parametrize("hand", HANDS)
@pytest.mark.parametrize("fahrenheit", FAHRENHEIT)
def test_pressure_in_the_cylinder(bench: Bench, hand: Hand, fahrenheit: int) -> None:
    """Straight lines between points of twenty degrees lie above a curve by up to 1.5 %."""
    kelvin = (fahrenheit + 459.67) / 1.8
    shown = bench.by(hand, {"air_temperature": f"{fahrenheit} degF"})["values"]["cylinder_pressure"]
    assert shown == pytest.approx(_propane("P", "T", kelvin, "Q", 0) - ATMOSPHERE, rel=0.02)


def test_weight_of_liquid_propane(bench: Bench) -> None:
    """The print is for commercial propane, which is a little lighter."""
    reference = _propane("D", "T", (60 + 459.67) / 1.8, "Q", 0)
    assert bench.day({})["propane_density"] == pytest.approx(reference, rel=0.01)


def test_boiling_point_of_the_reference() -> None:
    """The reference is the one that print quotes: 101.325 kPa at -42.11 °C."""
    assert _propane("T", "P", ATMOSPHERE, "Q", 0) - 273.15 == pytest.approx(-42.11, abs=0.005)
