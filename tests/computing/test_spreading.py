"""What moves a number most, on quantities simple enough to see the answer."""

from __future__ import annotations

import math

import pytest

from generator.computing import Workbook
from generator.computing.spreading import likely

RANGES = {
    "loaves": (20.0, 30.0),
    "loaf_mass": (0.8, 0.9),
    "water_share": (0.6, 0.7),
    "oven_temperature": (500.0, 550.0),
}


def test_the_largest_move_comes_first_and_idle_inputs_are_left_out(bakery: Workbook) -> None:
    """Flour is loaves x mass / (1 + water + salt): 24 x 0.9 / 1.7 as things stand."""
    found = likely(bakery, bakery.settle({}, {}), "flour_mass", RANGES)
    assert found is not None
    assert [move.input for move in found.moves] == ["loaves", "loaf_mass", "water_share"]
    assert found.moves[0].low == pytest.approx(20 * 0.9 / 1.7)
    assert found.moves[0].high == pytest.approx(30 * 0.9 / 1.7)
    assert found.moves[1].size(24 * 0.9 / 1.7) == pytest.approx(24 * 0.1 / 1.7)
    middle = 24 * 0.9 / 1.7
    down = math.hypot(middle - 20 * 0.9 / 1.7, middle - 24 * 0.8 / 1.7, middle - 24 * 0.9 / 1.72)
    up = math.hypot(30 * 0.9 / 1.7 - middle, 24 * 0.9 / 1.62 - middle)
    assert (found.low, found.high) == (pytest.approx(middle - down), pytest.approx(middle + up))


def test_rounding_up_moves_by_whole_steps(bakery: Workbook) -> None:
    found = likely(bakery, bakery.settle({}, {}), "oven_loads", RANGES)
    assert found is not None
    assert (found.moves[0].low, found.moves[0].high, found.low, found.high) == (3, 4, 3, 4)


def test_an_end_where_the_number_is_refused(bakery: Workbook) -> None:
    found = likely(bakery, bakery.settle({}, {}), "water_temperature", {"room_temperature": (285.15, 300.15)})
    assert found is not None
    assert found.moves[0].low == pytest.approx(273.15 + 25 + 2 * 13)
    hot = bakery.settle({}, {"dough_temperature": "30 °C"})
    found = likely(bakery, hot, "water_temperature", {"room_temperature": (285.15, 300.15)})
    assert found is not None
    assert found.moves[0].low is None
    assert found.low == pytest.approx(273.15 + 30 + 2 * 3)


def test_no_spread_for_what_is_refused_or_no_number(bakery: Workbook) -> None:
    settings = bakery.settle({}, {"room_temperature": "5 °C", "dough_temperature": "30 °C"})
    assert likely(bakery, settings, "water_temperature", RANGES) is None
    assert likely(bakery, settings, "slowest_work", RANGES) is None
