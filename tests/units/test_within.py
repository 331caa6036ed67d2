"""A value within limits: the last digit of a change of unit is left to it, and no more."""

import math

import pytest

from generator.units.within import lies_within


@pytest.mark.parametrize(
    ("value", "low", "high", "expected"),
    [
        (2, 2, 3, True),
        (3, 2, 3, True),
        (1.999, 2, 3, False),
        (3.001, 2, 3, False),
        (10 * 0.45359237, 4, 4.5359237, True),  # 10 lb, reckoned: 4.535923700000001
        (1000.0000009, 0, 1000, True),
        (1000.0000011, 0, 1000, False),
        (-40.00000003, -40, -10, True),
        (-40.00000005, -40, -10, False),
        (0, 0, 0, True),
        (math.nan, 0, 1, False),
    ],
)
def test_a_last_digit_is_left_to_changes_of_unit(value: float, low: float, high: float, expected: bool) -> None:
    assert lies_within(value, low, high) is expected
