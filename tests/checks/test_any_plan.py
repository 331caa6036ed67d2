"""Any plan within its ranges: every number is finite or refused with a sentence of its own, and both hands agree."""

from __future__ import annotations

import math
import random

import pytest

from tests.checks.conftest import Bench
from tests.formula.phone_machine import compute
from tests.repeating import TIMES

PLANS = 60 * TIMES
AT_AN_END = 0.1


def _any_plan(bench: Bench, chance: random.Random) -> dict[str, float | str]:
    """Every input anywhere in its range, now and then at an end; every choice at any option."""
    settings = dict(bench.workbook.settle({}, {}))
    for name, options in bench.workbook.givens.options.items():
        settings[name] = chance.choice(sorted(options))
    for name, given in bench.workbook.givens.inputs.items():
        place = chance.random()
        value = chance.uniform(given.low, given.high)
        value = given.low if place < AT_AN_END else given.high if place > 1 - AT_AN_END else value
        settings[name] = float(math.floor(value)) if given.whole else value
    return settings


@pytest.mark.parametrize("seed", range(PLANS))
def test_any_plan(bench: Bench, seed: int) -> None:
    settings = _any_plan(bench, random.Random(seed))
    python, phone = (compute(bench.workbook, settings, hand) for hand in ("python", "phone"))
    assert "not_finite" not in python["refused"].values()
    assert python["refused"] == phone["refused"]
    assert python["alerts"] == phone["alerts"]
    for name, value in python["values"].items():
        if isinstance(value, str):
            assert phone["values"][name] == value
        else:
            assert math.isfinite(value)
            assert math.isclose(phone["values"][name], value, rel_tol=1e-11, abs_tol=1e-300), name
