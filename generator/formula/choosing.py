"""How printed formulas choose among members of a set. `site_overrides/phone/choosing.js` is the same."""

from __future__ import annotations

import math
import operator
from collections.abc import Sequence
from functools import reduce

from generator.formula.runtime import finite

_MOST_HELPERS = 10000


def argmin(members: Sequence[str], values: Sequence[float]) -> str:
    """The member with the least value, the first of equals."""
    best = 0
    for index in range(1, len(values)):
        if values[index] < values[best]:
            best = index
    return members[best]


def argmax(members: Sequence[str], values: Sequence[float]) -> str:
    """The member with the greatest value, the first of equals."""
    best = 0
    for index in range(1, len(values)):
        if values[index] > values[best]:
            best = index
    return members[best]


def allot(total: float, works: Sequence[float], caps: Sequence[float]) -> list[float]:
    """Share out helpers so that the slowest place is as fast as can be, with as few helpers as that takes.

    A place with n helpers reaches n / work, and never more than its cap. Where there are fewer helpers than places,
    they walk between them and share all, each place in proportion to its work.
    """
    helpers = math.floor(finite(total + 1e-9))
    if helpers < len(works):
        together = reduce(operator.add, works)  # `sum` corrects itself since Python 3.12, and phones do not
        rate = min(total / together, *caps)
        return [rate * work for work in works]
    counts = [1.0 for _ in works]
    for _ in range(len(works), min(helpers, _MOST_HELPERS)):
        counts[_slowest(counts, works, caps)] += 1
    slowest = _slowest(counts, works, caps)
    reached = _rate(counts[slowest], works[slowest], caps[slowest])
    for index in range(len(works)):
        while counts[index] > 1 and _rate(counts[index] - 1, works[index], caps[index]) >= reached:
            counts[index] -= 1
    return counts


def _slowest(counts: Sequence[float], works: Sequence[float], caps: Sequence[float]) -> int:
    slowest = 0
    for index in range(1, len(counts)):
        if _rate(counts[index], works[index], caps[index]) < _rate(counts[slowest], works[slowest], caps[slowest]):
            slowest = index
    return slowest


def _rate(count: float, work: float, cap: float) -> float:
    return cap if count >= cap * work else count / work
