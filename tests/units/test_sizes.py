"""Sizes and dimensions of units, and the file that remembers them."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from generator.model.measure import Unit
from generator.units import Dimension, UnitBook, UnitFault
from generator.units.signs import unit_sign
from tests.units.shop import BOOK, UNITS


def test_sizes_are_exact() -> None:
    assert BOOK.size("lb").factor == Fraction("0.45359237")
    assert BOOK.size("degF").factor == Fraction(5, 9)
    assert BOOK.size("degF").offset == Fraction("459.67") * Fraction(5, 9)
    assert BOOK.size("ppm").factor == Fraction(1, 1000000)


def test_dimensions_multiply_and_take_roots() -> None:
    metre, second = Dimension.of({"meter": 1}), Dimension.of({"second": 1})
    assert metre * metre == BOOK.dimension("m2")
    assert (metre / second) == BOOK.dimension("m/s")
    assert (metre * metre) ** Fraction(1, 2) == metre
    assert metre / metre == Dimension()
    assert str(metre ** Fraction(1, 2)) == "meter^1/2"


def test_counted_things_are_dimensions_of_their_own() -> None:
    assert BOOK.dimension("kg/loaf") != BOOK.dimension("kg")
    assert BOOK.dimension("kg/loaf") * BOOK.dimension("loaf") == BOOK.dimension("kg")
    assert BOOK.counts_things("loaf") and BOOK.counts_things("1")
    assert not BOOK.counts_things("kg") and not BOOK.counts_things("percent")


def test_only_listed_units_exist() -> None:
    with pytest.raises(UnitFault, match="unknown unit `furlong`"):
        BOOK.size("furlong")


def test_a_unit_nobody_can_size_is_named() -> None:
    book = UnitBook(
        {"kg": Unit(symbol="kg"), "handful": Unit(symbol="handful"), "bad": Unit(symbol="b", definition="((")}
    )
    assert book.unknown == ("handful", "bad")


def test_sizes_are_remembered(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    memory = tmp_path / "new" / "units.json"
    UnitBook(UNITS, memory)
    monkeypatch.setattr("generator.units.sizing._ask", lambda *_: pytest.fail("asked again"))
    again = UnitBook(UNITS, memory)
    assert {text: again.size(text) for text in UNITS} == {text: BOOK.size(text) for text in UNITS}


@pytest.mark.parametrize("spoiled", ["", "[]", "{", '{"key": 1}', "\ufffd"])
def test_a_spoiled_memory_is_asked_anew(spoiled: str, tmp_path: Path) -> None:
    memory = tmp_path / "units.json"
    memory.write_text(spoiled, encoding="utf-8")
    assert UnitBook(UNITS, memory).size("lb") == BOOK.size("lb")


def test_other_units_are_not_taken_from_memory(tmp_path: Path) -> None:
    memory = tmp_path / "units.json"
    UnitBook({"cup": Unit(symbol="cup", definition="8 * 29.5735295625 milliliter")}, memory)
    assert UnitBook({"cup": Unit(symbol="cup", definition="250 milliliter")}, memory).to_si(1, "cup") == 0.00025


def test_a_memory_that_cannot_be_written_does_no_harm(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    assert UnitBook(UNITS, tmp_path / "file" / "units.json").size("kg") == BOOK.size("kg")


@pytest.mark.parametrize(
    ("unit", "sign"),
    [("W/m2/K4", "W/(m²·K⁴)"), ("kg/loaf", "kg/loaf"), ("1", ""), ("delta_degF", "°F"), ("m3", "m³"), ("m/s", "m/s")],
)
def test_units_stand_complete_in_a_working(unit: str, sign: str) -> None:
    assert unit_sign(unit, BOOK) == sign


def test_a_dimension_is_named_by_the_unit_of_si_size_that_starts_at_nought() -> None:
    assert BOOK.name(BOOK.dimension("lb")) == "kg"
    assert BOOK.name(BOOK.dimension("degF")) == "K"  # of the same size as °C, which starts elsewhere
    assert BOOK.name(BOOK.dimension("L")) == "m3"
    assert BOOK.name(BOOK.dimension("m2") * BOOK.dimension("m2")) == "meter^4"


def test_a_part_that_is_listed_as_a_whole_has_its_own_sign() -> None:
    book = UnitBook({**UNITS, "yd3": Unit(symbol="cu yd", definition="yd**3")})
    assert unit_sign("kg/yd3", book) == "kg/cu yd"
    assert unit_sign("kg/ft3", book) == "kg/ft3"
