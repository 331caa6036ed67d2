"""What written formulas come to, run by Python and by the phone; expected by hand from the values in `kitchen`."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.formula import Argument, Measured, parse, show_working, tree
from tests.formula.kitchen import SCOPE, by_phone, by_python, of, tree_of, wording
from tests.formula.test_workings import read_aloud


@pytest.mark.parametrize(
    ("formula", "expected"),
    [
        ("argmin(rate[s] for s in work)", "bake"),  # 0.02, 0.015 and 0.05 loaves a second
        ("argmax(rate[s] for s in work)", "pack"),
        ("sum(work[s] for s in work)", 136),  # 50 + 66 + 20 seconds
        ("min(work[s] for s in work)", 20),
        ("min(work[s] for s in night)", 66),  # a set of one
        ("sum(work[s] for s in night)", 66),
        ("max(work[s] for s in work)", 66),
        ("any(rate[s] > 0.04[loaf/s] for s in work)", True),
        ("all(rate[s] > 0.04[loaf/s] for s in work)", False),
        ("all(rate[s] > 0.01[loaf/s] for s in work)", True),
        ("any(rate[s] > 0.05[loaf/s] for s in work)", False),
        ("any(slowest == s for s in work)", True),  # the second of three
        ("all(slowest != s for s in work)", False),
        ("a ** 12", 4096),
        ("a ** -12", 1 / 4096),
        ("not a < 1", True),
        ("not a > 1", False),
        ("number(oven, degC)", 230),  # 503.15 less 273.15
        ("number(mass, lb)", 12.5 / 0.45359237),  # NIST SP 811: one pound is exactly 0.453 592 37 kg
        ("number(oven - room, delta_degF)", 374.4),  # 208 K times 1.8
        ("number(loaves, loaf)", 24),
        ("share_of(mass, c)", 3.125),  # a quarter of 12.5
        ("integral(t / 1[s] for t in span(0[s], 9[s]))", 40.5),  # half of nine times nine
        ("root(t * t - 9[s] * 1[s] for t in span(0[s], 9[s]))", 3),
        ("root(9[s] - t for t in span(0[s], 9[s]))", 9),  # at either end of the span as well
        ("root(t * 2 for t in span(0[s], 9[s]))", 0),
        ("rise(room, c)", 2.375),  # half way between 1.25 and 3.5, which lie a quarter up from 1 to 2 and 3 to 5
    ],
)
def test_a_formula_comes_to(formula: str, expected: float | str | bool) -> None:
    for found in (by_python(tree_of(formula)), by_phone(tree_of(formula))):
        if isinstance(expected, bool | str):
            assert found == expected
        else:
            assert found == pytest.approx(expected, rel=1e-12)


def test_a_function_of_bare_numbers_has_them_taken_once() -> None:
    """What already is the number of degrees, an argument of the function around it, goes in as it is."""
    degrees = Argument("t", Measured(), "degC")
    inside = replace(SCOPE, arguments={"t": degrees})
    local = tree.Local((0, 0), "t", degrees.kind, "degC")
    oven, mass = tree.Value((0, 0), "oven", of("temperature")), tree.Value((0, 0), "mass", of("mass"))
    assert parse("vapour(oven)", inside) == tree.Apply((0, 0), "vapour", (tree.InUnit((0, 0), oven, "degC"),))
    assert parse("vapour(t)", inside) == tree.Apply((0, 0), "vapour", (local,))
    assert parse("share_of(mass, t)", inside) == tree.Apply((0, 0), "share_of", (mass, local))


@pytest.mark.parametrize(("member", "helpers"), [("mix", 3), ("bake", 3), ("pack", 1)])
def test_a_split_gives_each_member_its_own(member: str, helpers: int) -> None:
    """Of 7, one each; the next goes where a loaf takes longest: bake (1/66 s), mix (1/50), bake (2/66), mix (2/50)."""
    split = tree_of("allot(d, work[s], rate[s] * 9 for s in work)", member)
    assert by_python(split) == by_phone(split) == helpers


def test_the_loop_of_a_split_may_be_longer_than_what_stands_before() -> None:
    assert by_python(tree_of("allot(3,a,c for every_single_place in work)", "mix")) == 1


def test_what_grows_without_bound_is_no_number() -> None:
    endless = tree_of("integral(exp(700) * exp(700) for t in span(0[s], 9[s]))")
    assert by_phone(endless) is None
    with pytest.raises(ArithmeticError):
        by_python(endless)


@pytest.mark.parametrize(
    ("formula", "in_words"),
    [
        ("integral(t / 1[s] for t in span(0[s], 9[s]))", "= ∫0 s9 s{t1 s}dt"),
        (
            "root(hot_air - 3[J] for hot_air in span(0[J], 9[J]))",
            "= hot air from 0 J to 9 J where hot air−3 J=0",
        ),
    ],
)
def test_a_working_names_what_runs_through_a_span(formula: str, in_words: str) -> None:
    assert in_words == read_aloud(show_working("mass", tree_of(formula), wording()).words)
