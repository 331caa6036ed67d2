"""What printed formulas call, in Python and in the JavaScript that is shipped, against closed forms and brute force."""

from __future__ import annotations

import itertools
import json
import math
import random
import re
from typing import Any

import pytest

from generator.formula import choosing, runtime
from generator.formula.python_code import NAMES
from tests.formula.phone_machine import HANDS, PHONE, Hand, PhoneMachine

MACHINE = PhoneMachine(
    "const tried = (f) => { try { return f(); } catch (e) { if (e instanceof NotANumber) return null; throw e; } };"
)


def call(hand: Hand, name: str, *given: object) -> Any:
    """None where there is no number."""
    if hand == "phone":
        return MACHINE.run(f"tried(() => {name}({', '.join(map(json.dumps, given))}))")
    try:
        return NAMES[name](*given)
    except ArithmeticError:
        return None


by_both = pytest.mark.parametrize("hand", HANDS)


@by_both
@pytest.mark.parametrize(
    ("name", "given", "expected"),
    [
        ("over", (1, 4), 0.25),
        ("over", (1, 0), None),
        ("over", (0, 0), None),
        ("power", (2, 0.5), math.sqrt(2)),
        ("power", (-2, 3), -8),
        ("power", (-2, 0.5), None),
        ("power", (0, -1), None),
        ("power", (0, 0.5), 0),
        ("power", (1e200, 2), None),
        ("exp", (1,), math.e),
        ("exp", (1000,), None),
        ("exp", (-1000,), 0),
        ("log", (math.e,), 1),
        ("log", (0,), None),
        ("log", (-1,), None),
        ("sqrt", (9,), 3),
        ("sqrt", (0,), 0),
        ("sqrt", (-1,), None),
        ("ceil", (2.0000000001,), 2),
        ("ceil", (2.00001,), 3),
        ("ceil", (1_000_000.0005,), 1_000_000),  # what a change of unit leaves grows with the number
        ("ceil", (1_000_000.01,), 1_000_001),
        ("ceil", (5e-10,), 0),  # nor does it shrink with a number below one
        ("ceil", (1.5e-9,), 1),
        ("ceil", (-2.5,), -2),
        ("floor", (1.9999999999,), 2),
        ("floor", (1.9999,), 1),
        ("floor", (0.9999999985,), 0),
        ("floor", (999_999.9995,), 1_000_000),
        ("floor", (-5e-10,), 0),
        ("floor", (-1.5e-9,), -1),
        ("floor", (-2.5,), -3),
        ("round", (2.5,), 3),
        ("round", (2.499,), 2),
        ("round", (-2.5,), -2),
        ("round", (-2.501,), -3),
        ("argmin", (["x", "y", "z"], [2, 1, 1]), "y"),
        ("argmin", (["x", "y"], [1, 2]), "x"),
        ("argmax", (["x", "y", "z"], [1, 2, 2]), "y"),
        ("argmax", (["x", "y"], [2, 1]), "x"),
    ],
)
def test_single_calls(hand: Hand, name: str, given: tuple[object, ...], expected: object) -> None:
    found = call(hand, name, *given)
    assert found == (pytest.approx(expected, rel=1e-15) if isinstance(expected, float) else expected)


@by_both
@pytest.mark.parametrize("pounds", [1, 3, 7, 22, 110, 453])
def test_rounding_up_survives_a_change_of_unit(hand: Hand, pounds: int) -> None:
    """A whole number of ten-pound bags, computed by way of kilograms, needs no bag more."""
    kilograms = pounds * 10 * 0.45359237
    assert call(hand, "ceil", kilograms / 0.45359237 / 10) == pounds


LINE = {"axes": [[0, 10, 30]], "values": [1, 2, 6], "hold": False}
HELD = {**LINE, "hold": True}
WARM = {"axes": [[291.15, 299.15]], "values": [1, 2], "hold": False}
PLANE = {"axes": [[0, 10], [0, 1, 2]], "values": [[0, 1, 2], [10, 11, 12]], "hold": True}


@by_both
@pytest.mark.parametrize(
    ("table", "at", "expected"),
    [
        (LINE, (0,), 1),
        (LINE, (5,), 1.5),
        (LINE, (10,), 2),
        (LINE, (20,), 4),
        (LINE, (30,), 6),
        (LINE, (30.00000000001,), 6),
        (LINE, (30.1,), None),
        (LINE, (-0.1,), None),
        (HELD, (99,), 6),
        (HELD, (-99,), 1),
        (PLANE, (5, 0.5), 5.5),
        (PLANE, (0, 2), 2),
        (PLANE, (10, 1.25), 11.25),
        (PLANE, (99, -99), 10),
        (WARM, (299.15 + 1e-9,), 2),  # within the slack of a thousand millionth of eight kelvins
        (WARM, (299.15 + 1e-7,), None),
        (WARM, (291.15 - 1e-7,), None),
    ],
)
def test_tables(hand: Hand, table: dict[str, Any], at: tuple[float, ...], expected: float | None) -> None:
    assert call(hand, "lookup", table, *at) == (None if expected is None else pytest.approx(expected, rel=1e-12))


@pytest.mark.parametrize("hand", HANDS)
def test_tables_of_two_axes_are_read_as_scipy_reads_them(hand: Hand) -> None:
    from scipy.interpolate import RegularGridInterpolator  # takes a second to load

    chance = random.Random(5)
    axes = [[0.0, 1.0, 4.0, 6.0, 11.0], [-2.0, 0.5, 1.0, 9.0]]
    values = [[chance.uniform(-50, 50) for _ in axes[1]] for _ in axes[0]]
    of_scipy = RegularGridInterpolator(axes, values, method="linear")
    places = [*itertools.product(*axes), *((chance.uniform(0, 11), chance.uniform(-2, 9)) for _ in range(40))]
    for place in places:
        found = call(hand, "lookup", {"axes": axes, "values": values, "hold": False}, *place)
        assert found == pytest.approx(float(of_scipy([place])[0]), rel=1e-9, abs=1e-9)


CLOSED_FORMS = [
    ("t", 0.0, 2.0, 2.0, 1e-13),
    ("3 * t * t", -1.0, 2.0, 9.0, 1e-13),
    ("exp(t)", 0.0, 1.0, math.e - 1, 1e-13),
    ("over(1, t)", 1.0, 10.0, math.log(10), 1e-10),
    ("over(1, (1.2 - t))", 0.0, 1.0, math.log(1.2 / 0.2), 1e-9),
    ("sqrt(t)", 0.0, 1.0, 2 / 3, 1e-4),
    ("power(t, 9.0)", 0.0, 3.0, 3**10 / 10, 1e-13),
    ("t", 2.0, 0.0, -2.0, 1e-13),
    ("t", 2.0, 2.0, 0.0, 1e-13),
]


@by_both
@pytest.mark.parametrize(("body", "low", "high", "expected", "within"), CLOSED_FORMS)
def test_integrals(hand: Hand, body: str, low: float, high: float, expected: float, within: float) -> None:
    if hand == "phone":
        found = MACHINE.run(f"integral((t) => {body}, {low}, {high})")
    else:
        found = runtime.integral(eval(f"lambda t: {body}", dict(NAMES)), low, high)
    assert found == pytest.approx(expected, rel=within, abs=1e-15)


@by_both
@pytest.mark.parametrize(
    ("body", "low", "high", "expected"),
    [
        ("t * t - 2", 0.0, 2.0, math.sqrt(2)),
        ("2 - t * t", 0.0, 2.0, math.sqrt(2)),
        ("exp(t) - 5", -3.0, 3.0, math.log(5)),
        ("t", 0.0, 2.0, 0.0),
        ("t - 2", 0.0, 2.0, 2.0),
        ("t * t + 1", -2.0, 2.0, None),
    ],
)
def test_roots(hand: Hand, body: str, low: float, high: float, expected: float | None) -> None:
    if hand == "phone":
        found = MACHINE.run(f"tried(() => root((t) => {body}, {low}, {high}))")
    else:
        try:
            found = runtime.root(eval(f"lambda t: {body}", dict(NAMES)), low, high)
        except ArithmeticError:
            found = None
    assert found == (None if expected is None else pytest.approx(expected, rel=1e-14))


def _best_by_trying_all(total: int, works: list[float], caps: list[float]) -> list[int]:
    """Of all splits with one at least everywhere: the highest slowest rate, then the fewest people."""

    def slowest(split: tuple[int, ...]) -> float:
        return min(min(people / work, cap) for people, work, cap in zip(split, works, caps, strict=True))

    most = total - len(works) + 1
    splits = (each for each in itertools.product(range(1, most + 1), repeat=len(works)) if sum(each) <= total)
    return list(max(splits, key=lambda split: (slowest(split), -sum(split))))


def _random_cases(count: int) -> list[tuple[int, list[float], list[float]]]:
    chance = random.Random(11)
    cases = []
    for _ in range(count):
        places = chance.randint(1, 4)
        works = [chance.choice([10, 20, 30, chance.uniform(1, 100)]) for _ in range(places)]
        caps = [chance.choice([0.05, 0.1, chance.uniform(0.001, 1), 1e9]) for _ in range(places)]
        cases.append((chance.randint(places, places + 5), works, caps))
    return cases


def test_the_best_split_is_the_best_of_all() -> None:
    cases = _random_cases(2000)
    by_phone = MACHINE.run("cases.map((c) => allot(...c))", cases=cases)
    for case, phone in zip(cases, by_phone, strict=True):
        assert choosing.allot(*case) == phone
        total, works, caps = case
        best = _best_by_trying_all(total, works, caps)
        rates = [[min(n / w, c) for n, w, c in zip(split, works, caps, strict=True)] for split in (phone, best)]
        assert min(rates[0]) == pytest.approx(min(rates[1]), rel=1e-12)
        assert sum(phone) == sum(best)


@by_both
@pytest.mark.parametrize(
    ("total", "works", "caps", "expected"),
    [
        (6, [30, 60, 30], [9, 9, 9], [1, 2, 1]),
        (3, [30, 60, 30], [9, 9, 9], [1, 1, 1]),
        (2, [30, 60, 30], [9, 9, 9], [0.5, 1, 0.5]),
        (1, [20, 60], [9, 0.01], [0.2, 0.6]),
        (9, [30, 30], [1 / 30, 9], [1, 1]),
        (4.7, [10, 10], [9, 9], [2, 2]),
        (5, [0, 10], [9, 0.1], [1, 1]),
        (0, [10, 10], [9, 9], [0, 0]),
    ],
)
def test_splits(hand: Hand, total: float, works: list[float], caps: list[float], expected: list[float]) -> None:
    assert call(hand, "allot", total, works, caps) == expected


@by_both
def test_a_slip_of_the_hand_shares_out_no_more_than_ten_thousand(hand: Hand) -> None:
    """So that a million, typed in haste, does not stop the phone; an even number over two equal places is halved."""
    assert call(hand, "allot", 1_000_000, [10, 10], [1e9, 1e9]) == [5000, 5000]


def test_both_runtimes_have_the_same_functions() -> None:
    """And the same numbers in them, down to the last figure."""
    javascript = "\n".join((PHONE / name).read_text("utf-8") for name in ("runtime.js", "choosing.js"))
    exported = set(re.findall(r"^export function (\w+)", javascript, re.MULTILINE)) | {"abs", "min", "max"}
    assert exported == {*NAMES, "finite"}
    assert re.findall(r"0\.\d{9,}", javascript) == [str(abs(x)) for x in (*runtime._NODES[1:], *runtime._WEIGHTS)]
