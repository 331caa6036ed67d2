"""Random formulas, each reckoned five ways: by Python's own eval of a text written beside it, by the printed Python, by
the printed JavaScript, and from the two workings as a person would read them."""

from __future__ import annotations

import math
from typing import Any, NamedTuple

from hypothesis import given, settings
from hypothesis import strategies as st

from generator.formula import check, show_working
from generator.formula.kinds import BARE, TRUTH
from generator.formula.runtime import ceil, floor, nearest
from tests.formula.kitchen import SCOPE, VALUES, by_phone, by_python, tree_of, wording
from tests.formula.reader_of_maths import read_numbers
from tests.repeating import TIMES


class Pair(NamedTuple):
    """A formula, and the same in plain Python with SI numbers."""

    formula: str
    python: str


LEAVES = [
    *(Pair(name, f"v['{name}']") for name in "abcd"),
    *(Pair(number, number) for number in ("0", "1", "2", "0.5", "3.75", "12", "1e-3")),
    Pair("number(mass, lb)", "(v['mass'] / 0.45359237)"),
    Pair("number(oven, degC)", "(v['oven'] - 273.15)"),
    Pair("mass / 1[kg]", "v['mass']"),
    Pair("2[lb] / 1[kg]", "(2 * 0.45359237)"),
    Pair("(oven - room) / 1[K]", "(v['oven'] - v['room'])"),
    Pair("(-60[degC] - room) / 9[delta_degF]", "((213.15 - v['room']) / 5)"),
    Pair("15[percent]", "0.15"),
    Pair("sum(rate[s] * work[s] for s in work)", "(0.02 * 50 + 0.015 * 66 + 0.05 * 20)"),
    Pair("max(work[s] for s in work) / min(work[s] for s in work)", "(66 / 20)"),
]


def _join(sign: str) -> Any:
    return lambda pair: Pair(
        f"({pair[0].formula}) {sign} ({pair[1].formula})", f"(({pair[0].python}) {sign} ({pair[1].python}))"
    )


def _call(name: str) -> Any:
    return lambda pairs: Pair(
        f"{name}({', '.join(p.formula for p in pairs)})", f"{name}({', '.join(p.python for p in pairs)})"
    )


def _bare(pairs: Any) -> Any:
    """Signs without brackets, so that what stands first counts."""
    left, sign, right = pairs
    return Pair(f"{left.formula} {sign} {right.formula}", f"{left.python} {sign} {right.python}")


def _grow(inner: Any) -> Any:
    two = st.tuples(inner, inner)
    truth = st.one_of(
        *(two.map(_join(sign)) for sign in ("<", "<=", ">", ">=")),
        st.just(Pair("flour == rye", "True")),
        st.just(Pair("slowest != bake and a < d", "False")),
    )
    truths = st.one_of(
        truth,
        truth.map(lambda t: Pair(f"not ({t.formula})", f"(not ({t.python}))")),
        st.tuples(truth, truth).map(_join("and")),
        st.tuples(truth, truth).map(_join("or")),
    )
    return st.one_of(
        *(two.map(_join(sign)) for sign in "+-*/"),
        st.tuples(st.sampled_from(LEAVES[:11]), st.sampled_from("+-*/"), st.sampled_from(LEAVES[:11])).map(_bare),
        inner.map(lambda one: Pair(f"-({one.formula})", f"(-({one.python}))")),
        inner.map(lambda one: Pair(f"({one.formula}) ** 2", f"(({one.python}) ** 2)")),
        inner.map(lambda one: Pair(f"({one.formula}) ** -0.5", f"power({one.python}, -0.5)")),
        inner.map(lambda one: Pair(f"({one.formula}) ** (1 / 3)", f"power({one.python}, 1 / 3)")),
        *(
            inner.map(lambda one, name=name: _call(name)([one]))
            for name in ("abs", "sqrt", "exp", "log", "ceil", "floor")
        ),
        st.lists(inner, min_size=2, max_size=3).map(_call("min")),
        st.lists(inner, min_size=2, max_size=3).map(_call("max")),
        st.tuples(inner, truths, inner).map(
            lambda t: Pair(
                f"({t[0].formula}) if ({t[1].formula}) else ({t[2].formula})",
                f"(({t[0].python}) if ({t[1].python}) else ({t[2].python}))",
            )
        ),
    )


EXPRESSIONS = st.recursive(st.sampled_from(LEAVES), _grow, max_leaves=12)


def _power(base: float, exponent: float) -> float:
    found = base**exponent
    if isinstance(found, complex):
        raise ValueError
    return found


def _own(python: str) -> float | None:
    """By Python's own rules; None where it has no finite number."""
    space = {"v": VALUES, "power": _power, "sqrt": math.sqrt, "exp": math.exp, "log": math.log}
    try:
        found = float(eval(python, {**space, "ceil": ceil, "floor": floor, "round": nearest}))
    except (ArithmeticError, ValueError):
        return None
    return found if math.isfinite(found) else None


def _tried(reckon: Any) -> float | None:
    try:
        found = reckon()
    except ArithmeticError:
        return None
    return found if math.isfinite(found) else None


def _agree(one: float | None, other: float | None, within: float) -> bool:
    if one is None or other is None:
        return one is other
    return math.isclose(one, other, rel_tol=within, abs_tol=within)


@settings(max_examples=100 * TIMES, deadline=None, derandomize=True, database=None)
@given(EXPRESSIONS)
def test_all_ways_agree(pair: Pair) -> None:
    tree = tree_of(pair.formula)
    assert check(tree, SCOPE) == BARE
    expected = _own(pair.python)
    assert _agree(_tried(lambda: by_python(tree)), expected, 1e-12)
    assert _agree(by_phone(tree), expected, 1e-11)
    working = show_working("a", tree, wording())
    assert _agree(_tried(lambda: read_numbers(working.numbers)[0]), expected, 1e-9), working.numbers


@settings(max_examples=30 * TIMES, deadline=None, derandomize=True, database=None)
@given(st.tuples(EXPRESSIONS, EXPRESSIONS), st.sampled_from(["<", "<=", ">", ">="]))
def test_truths_agree(pairs: tuple[Pair, Pair], sign: str) -> None:
    tree = tree_of(f"({pairs[0].formula}) {sign} ({pairs[1].formula})")
    assert check(tree, SCOPE) == TRUTH
    left, right = (_own(pair.python) for pair in pairs)
    if left is None or right is None:
        return
    expected = eval(f"left {sign} right")
    assert by_python(tree) is expected
    assert by_phone(tree) is expected
