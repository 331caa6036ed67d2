"""How sure a number is: doubts read, combined as the guide to uncertainty combines them, and kept inside ranges."""

from __future__ import annotations

import math
from typing import Any

import pytest

from generator.computing import Workbook
from generator.computing.doubting import Doubt, read_doubt
from generator.computing.spreading import likely
from generator.units import UnitFault


def test_independent_doubts_add_by_their_squares(bakery: Workbook) -> None:
    """Flour is loaves x mass / (1 + water + salt): 24 x 0.9 / 1.7. JCGM 100:2008, 5.1.2: squares add."""
    flour = 24 * 0.9 / 1.7
    found = likely(bakery, bakery.settle({}, {}), "flour_mass", {"loaves": (23.0, 25.0), "loaf_mass": (0.87, 0.93)})
    assert found is not None
    step = math.hypot(flour / 24, flour * 0.03 / 0.9)
    assert found.low == pytest.approx(flour - step)
    assert found.high == pytest.approx(flour + step)
    assert [move.input for move in found.moves] == ["loaves", "loaf_mass"]


def test_nothing_is_said_of_what_is_refused(bakery: Workbook) -> None:
    settings = bakery.settle({}, {"room_temperature": "5 °C", "dough_temperature": "30 °C"})
    assert likely(bakery, settings, "water_temperature", {"room_temperature": (285.15, 300.15)}) is None


@pytest.mark.parametrize(
    ("doubt", "value", "ends"), [(Doubt(2.0, False), 290.0, (288, 292)), (Doubt(0.1, True), -50.0, (-55, -45))]
)
def test_a_doubt_reaches_to_both_sides(doubt: Doubt, value: float, ends: tuple[float, float]) -> None:
    assert doubt.around(value) == pytest.approx(ends)


def _measure(bakery: Workbook, name: str) -> Any:
    return bakery.items[name].measure


def test_doubts_are_amounts_or_shares(bakery: Workbook) -> None:
    warmth = _measure(bakery, "room_temperature")
    found = read_doubt("3 degC", warmth, bakery.book)
    assert found.reach == pytest.approx(3.0)
    assert not found.relative
    assert read_doubt("12.5 percent of it", warmth, bakery.book) == Doubt(0.125, True)


@pytest.mark.parametrize("text", ["ten percent of it", "10 kg of it", "10 of it"])
def test_a_share_that_is_none_is_refused(bakery: Workbook, text: str) -> None:
    with pytest.raises(UnitFault) as caught:
        read_doubt(text, _measure(bakery, "room_temperature"), bakery.book)
    assert (caught.value.fault, caught.value.hint) == (
        f"`{text}` is not a share",
        "write for example `10 percent of it`",
    )


def test_a_doubt_does_not_leave_the_input_range(bakery: Workbook, monkeypatch: pytest.MonkeyPatch) -> None:
    limits = bakery.givens.inputs["loaves"]
    seen: dict[str, tuple[float, float]] = {}
    monkeypatch.setattr("generator.computing.workbook.likely", lambda book, settings, name, ranges: seen.update(ranges))
    monkeypatch.setitem(bakery.givens.doubts, "loaves", Doubt(1e9, False))
    bakery.how_sure(bakery.settle({}, {}), "flour_mass")
    assert seen["loaves"] == (limits.low, limits.high)
