"""What formulas give: dimensions, temperatures as read and their differences, truths and words."""

from __future__ import annotations

from fractions import Fraction

import pytest

from generator.formula import TRUTH, FormulaFault, Measured, Word, check_gives
from tests.formula.kitchen import SCOPE, kind_of, of, tree_of
from tests.units.shop import BOOK

J = BOOK.dimension("J")


@pytest.mark.parametrize(
    ("formula", "unit"),
    [
        ("loaves * loaf_mass", "kg"),
        ("heat / mass", "J/kg"),
        ("333.55[kJ/kg] * mass", "J"),
        ("heat / (oven - room)", "J/K"),
        ("5.67e-8[W/m2/K4] * (oven - room) ** 4 * 2[m2]", "W"),
        ("sqrt(mass * mass)", "kg"),
        ("(mass ** 0.5) ** 2", "kg"),
        ("mass ** (1 / 3) * mass ** (2 / 3)", "kg"),
        ("mass ** -1 * mass ** 2", "kg"),
        ("abs(-mass)", "kg"),
        ("min(mass, 3[lb], 0[kg])", "kg"),
        ("mass if a > 1 else 2[oz]", "kg"),
        ("integral(4.2[kJ/kg] * mass / 1[K] for t in span(room, oven))", "J"),
        ("integral(2[W] for t in span(0[s], 3[min]))", "J"),
        ("share_of(mass, a)", "kg"),
        ("vapour(oven) - vapour(room)", "Pa"),
        ("proof(room)", "s"),
        ("1 / work[mix]", "loaf/s"),
        ("sum(rate[s] for s in work)", "loaf/s"),
        ("max(rate[s] for s in work)", "loaf/s"),
        ("number(oven, degF) + number(mass, lb) + number(oven - room, delta_degF)", "1"),
        ("exp(-a) + log(2) + rise(oven, a) + ceil(loaves / 1[loaf])", "1"),
        ("3[loaf] * 4[kg/loaf] / 2[kg]", "1"),
    ],
)
def test_dimensions(formula: str, unit: str) -> None:
    assert kind_of(formula) == Measured(BOOK.dimension(unit))


@pytest.mark.parametrize(
    ("formula", "is_point"),
    [
        ("oven - room", False),
        ("oven + 5[K]", True),
        ("5[delta_degF] + oven", True),
        ("oven - 5[K]", True),
        ("oven - (oven - room)", True),
        ("max(oven, 0[degC])", True),
        ("oven if a > 1 else -60[degC]", True),
        ("root(vapour(t) - 2[kPa] for t in span(0[degC], 90[degC]))", True),
        ("root(t * mass - 3[kg] for t in span(0, 9)) * 1[K]", False),
        ("0[K] + oven - oven", False),
    ],
)
def test_temperatures_as_read_and_differences(formula: str, is_point: bool) -> None:
    assert kind_of(formula) == Measured(BOOK.dimension("K"), is_point)


def test_a_root_of_a_unit_keeps_half_its_powers() -> None:
    assert kind_of("heat ** 0.5") == Measured(J ** Fraction(1, 2))
    assert kind_of("sqrt(heat)") == kind_of("heat ** 0.5")


@pytest.mark.parametrize(
    "formula",
    ["a < b", "a < b <= c", "not (a < b or b < c)", "oven > 200[degC]", "flour == rye", "slowest != mix and a == 1",
     "any(rate[s] > 1[loaf/s] for s in work)", "all(slowest != s for s in work)"],
)  # fmt: skip
def test_truths(formula: str) -> None:
    assert kind_of(formula) == TRUTH


def test_words() -> None:
    assert kind_of("argmin(rate[s] for s in work)") == Word(frozenset({"mix", "bake", "pack"}))
    assert kind_of("flour") == Word(frozenset({"white", "rye"}))


def test_below_nought_on_a_thermometer() -> None:
    assert tree_of("-40[degC]").value == 233.15  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("formula", "measure", "fault", "hint"),
    [
        ("loaves * loaf_mass", "heat", "the formula gives `kg`, not `J`", ""),
        ("loaf_mass * 4[kJ/kg]", "heat", "the formula gives `kilogram·loaf^-1·meter^2·second^-2`, not `J`", ""),
        ("oven", "warming", "the formula gives a temperature as read, not `K`", ""),
        ("oven - room", "temperature", "the formula gives `K`, not a temperature as read", ""),
        ("0", "heat", "the formula gives a bare number, not `J`", "give the number its unit: `0[J]`"),
        ("a > b", "heat", "the formula gives a condition, not `J`", ""),
        ("flour", "heat", "the formula gives an option, not `J`", ""),
    ],
)
def test_what_is_wanted_must_come_out(formula: str, measure: str, fault: str, hint: str) -> None:
    with pytest.raises(FormulaFault) as found:
        check_gives(tree_of(formula), of(measure), SCOPE)
    assert (found.value.fault, found.value.hint) == (fault, hint)
    assert (found.value.column, found.value.end) == (1, len(formula) + 1)


def test_a_number_where_a_condition_is_wanted_needs_no_unit() -> None:
    with pytest.raises(FormulaFault) as found:
        check_gives(tree_of("3"), TRUTH, SCOPE)
    assert (found.value.fault, found.value.hint) == ("the formula gives a bare number, not a condition", "")


def test_the_forgotten_count_is_caught() -> None:
    """A weight of one loaf is no weight: someone forgot to multiply by the loaves."""
    with pytest.raises(FormulaFault):
        check_gives(tree_of("loaf_mass"), of("mass"), SCOPE)


def test_heat_from_one_temperature_instead_of_two_is_caught() -> None:
    with pytest.raises(FormulaFault, match="temperature as read"):
        kind_of("4[kJ/kg] / 1[K] * mass * oven")
