"""What written formulas come to, run by Python and by the phone; expected by hand from the values in `kitchen`."""

from __future__ import annotations

import pytest

from generator.formula import show_working
from tests.formula.kitchen import by_phone, by_python, tree_of, wording
from tests.formula.test_workings import read_aloud


@pytest.mark.parametrize(
    ("formula", "expected"),
    [
        ("argmin(rate[s] for s in work)", "bake"),  # 0.02, 0.015 and 0.05 loaves a second
        ("argmax(rate[s] for s in work)", "pack"),
        ("sum(work[s] for s in work)", 136),  # 50 + 66 + 20 seconds
        ("min(work[s] for s in work)", 20),
        ("max(work[s] for s in work)", 66),
        ("any(rate[s] > 0.04[loaf/s] for s in work)", True),
        ("all(rate[s] > 0.04[loaf/s] for s in work)", False),
        ("all(rate[s] > 0.01[loaf/s] for s in work)", True),
        ("any(rate[s] > 0.05[loaf/s] for s in work)", False),
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


def test_what_grows_without_bound_is_no_number() -> None:
    tree = tree_of("integral(exp(700) * exp(700) for t in span(0[s], 9[s]))")
    assert by_phone(tree) is None
    with pytest.raises(ArithmeticError):
        by_python(tree)


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
