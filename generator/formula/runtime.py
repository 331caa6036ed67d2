"""What printed formulas call. `site_overrides/phone/runtime.js` is the same, function for function.

Whatever has no number - a division by zero, the root of a negative, a place outside a table - raises ArithmeticError,
so that the quantity is refused by name instead of passing something odd on.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import Any, TypedDict

_NODES = (0.0, 0.5384693101056831, -0.5384693101056831, 0.906179845938664, -0.906179845938664)
_WEIGHTS = (0.5688888888888889, 0.47862867049936647, 0.47862867049936647, 0.23692688505618908, 0.23692688505618908)
_PANELS = 16
_BISECTIONS = 60


class Table(TypedDict):
    """Points of each axis in rising order; one value a point, or one row of values a point of the first axis."""

    axes: list[list[float]]
    values: list[Any]
    hold: bool


def finite(number: float) -> float:
    """The number itself, where it is one."""
    if not math.isfinite(number):
        raise ArithmeticError("not a number")
    return number


def over(above: float, below: float) -> float:
    """One number divided by another."""
    if below == 0:
        raise ArithmeticError("division by zero")
    return above / below


def power(base: float, exponent: float) -> float:
    """A number to a fixed power."""
    if base < 0 and exponent != math.floor(exponent):
        raise ArithmeticError("root of a negative number")
    return finite(base**exponent)


def exp(number: float) -> float:
    """The number e to a power."""
    return finite(math.exp(number))


def log(number: float) -> float:
    """The natural logarithm."""
    if number <= 0:
        raise ArithmeticError("logarithm of nothing")
    return math.log(number)


def sqrt(number: float) -> float:
    """The square root."""
    if number < 0:
        raise ArithmeticError("root of a negative number")
    return math.sqrt(number)


def ceil(number: float) -> float:
    """Round up, but not because of a last digit that a change of unit left behind."""
    return math.ceil(finite(number - 1e-9 * max(1, abs(number)))) + 0.0


def floor(number: float) -> float:
    """Round down, with the same patience."""
    return math.floor(finite(number + 1e-9 * max(1, abs(number)))) + 0.0


def nearest(number: float) -> float:
    """Round to the nearest whole number, halves up."""
    return math.floor(finite(number + 0.5)) + 0.0


def lookup(table: Table, first: float, second: float | None = None) -> float:
    """Read a table of one or two axes by straight lines."""
    row, share = _position(table["axes"][0], first, table["hold"])
    if second is None:
        return _between(table["values"][row], table["values"][row + 1], share)
    column, part = _position(table["axes"][1], second, table["hold"])
    above, below = table["values"][row], table["values"][row + 1]
    return _between(
        _between(above[column], above[column + 1], part), _between(below[column], below[column + 1], part), share
    )


def _position(points: Sequence[float], at: float, hold: bool) -> tuple[int, float]:
    """The interval a place lies in, and how far along."""
    last = len(points) - 1
    slack = 1e-9 * (points[last] - points[0])
    if not hold and (at < points[0] - slack or at > points[last] + slack):
        raise ArithmeticError("outside the table")
    inside = min(max(at, points[0]), points[last])
    index = 0
    while index < last - 1 and inside > points[index + 1]:
        index += 1
    return index, (inside - points[index]) / (points[index + 1] - points[index])


def _between(one: float, other: float, share: float) -> float:
    return one + (other - one) * share


def integral(body: Callable[[float], float], low: float, high: float) -> float:
    """The definite integral, by Gauss and Legendre's five points in each of 16 panels."""
    step = (high - low) / _PANELS
    total = 0.0
    for panel in range(_PANELS):
        middle = low + (panel + 0.5) * step
        for node in range(5):
            total += _WEIGHTS[node] * body(middle + _NODES[node] * step / 2)
    return finite(total * step / 2)


def root(body: Callable[[float], float], low: float, high: float) -> float:
    """Where the body changes its sign between low and high, by halving; there must be such a place."""
    at_low, at_high = body(low), body(high)
    if at_low == 0:
        return low
    if at_high == 0:
        return high
    if (at_low < 0) == (at_high < 0):
        raise ArithmeticError("no root in the span")
    for _ in range(_BISECTIONS):
        middle = (low + high) / 2
        if (body(middle) < 0) == (at_low < 0):
            low = middle
        else:
            high = middle
    return (low + high) / 2
