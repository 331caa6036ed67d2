"""The integral of the heat-up against its sum by single degrees, and against a burner with no losses."""

from __future__ import annotations

import numpy
import pytest

from tests.checks.conftest import Bench

DEGREES = numpy.arange(115, 146)


@pytest.mark.parametrize("wind", ["0 mph", "4 mph"])
@pytest.mark.parametrize("burner", ["45000 Btu/h", "80000 Btu/h"])
def test_sum_of_degrees(bench: Bench, wind: str, burner: str) -> None:
    """Power left over is read at every degree of the thermostat; nothing but those readings goes into the sum."""
    from scipy.integrate import simpson  # takes a second to load, and few tests need it

    rest = {"wind_speed": wind, "burner_power": burner, "scald_fill_temperature": "115 degF"}
    looked_at = ("scald_net_power", "scald_heat_up_heat", "scald_heat_up_time")
    days = [bench.day({**rest, "scald_set_temperature": f"{degree} degF"}, *looked_at) for degree in DEGREES]
    powers = numpy.array([day["scald_net_power"] for day in days])
    heats = numpy.array([day["scald_heat_up_heat"] for day in days])
    capacity = heats[-1] / (30 / 1.8)
    assert powers.min() > 0
    expected = simpson(capacity / powers, x=DEGREES / 1.8)
    assert days[-1]["scald_heat_up_time"] == pytest.approx(expected, rel=0.001)


def test_no_losses(bench: Bench) -> None:
    """A huge burner on a small open water heats as fast as its power alone would."""
    day = bench.day({"burner_power": "500000 Btu/h", "scald_surface_area": "0.5 ft2", "scald_wall_area": "0 ft2"})
    shortest = day["scald_heat_up_heat"] / day["burner_heat_to_water"]
    assert shortest < day["scald_heat_up_time"] < shortest * 1.01


def test_losses_never_shorten(bench: Bench) -> None:
    day = bench.day({})
    assert day["scald_heat_up_time"] > day["scald_heat_up_heat"] / day["burner_heat_to_water"]
    assert day["scald_heat_up_time"] < day["scald_heat_up_heat"] / day["scald_net_power"]
