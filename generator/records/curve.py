"""Readings that near another temperature ever more slowly. `curve.js` is the same, function for function."""

from __future__ import annotations

import math
from collections.abc import Sequence
from statistics import fmean
from typing import NamedTuple

_LAG_SHARE = 0.7


class Point(NamedTuple):
    """Milliseconds since 1970, and a value in SI."""

    at: float
    value: float


class Curve(NamedTuple):
    """`toward + difference * exp(-rate * seconds since from)`; `spread` is that of the logarithms about the line."""

    rate: float
    difference: float
    start: float
    toward: float
    spread: float


def fit_curve(points: Sequence[Point], toward: float) -> Curve | None:
    """The curve through points in order of time, or None where they do not near it.

    While more than seven tenths of the first difference are left the lag still rules; such points are left out where
    two later ones are there.
    """
    side = math.copysign(1, points[0].value - toward) if points and points[0].value != toward else 0
    near = [(point.at, side * (point.value - toward)) for point in points if side * (point.value - toward) > 0]
    late = [point for point in near if point[1] <= _LAG_SHARE * near[0][1]]
    used = late if len(late) >= 2 else near[-2:]
    if len(used) < 2:
        return None
    start = used[0][0]
    times, logs = [(at - start) / 1000 for at, _ in used], [math.log(left) for _, left in used]
    mean_time, mean_log = fmean(times), fmean(logs)
    width = sum((time - mean_time) ** 2 for time in times)
    pairs = list(zip(times, logs, strict=True))
    slope = sum((time - mean_time) * (log - mean_log) for time, log in pairs) / width if width > 0 else 0.0
    if not slope < 0:
        return None
    begin = mean_log - slope * mean_time
    spread = math.sqrt(fmean((log - begin - slope * time) ** 2 for time, log in pairs))
    return Curve(-slope, side * math.exp(begin), start, toward, spread)


def value_at(curve: Curve, at: float) -> float:
    """The curve's value at a time."""
    return curve.toward + curve.difference * math.exp(-curve.rate * (at - curve.start) / 1000)


def time_of(curve: Curve, value: float) -> float | None:
    """When the curve comes to a value; None where it never does."""
    left = value - curve.toward
    ratio = curve.difference / left if left else 0
    return curve.start + math.log(ratio) / curve.rate * 1000 if ratio > 0 else None


def reached_at(points: Sequence[Point], toward: float, limit: float) -> float | None:
    """When a limit was passed, between the two readings on either side of it; None where it was not."""
    if limit == toward:
        return None
    shares = [(point.value - toward) / (limit - toward) for point in points]
    place = next((place for place, share in enumerate(shares) if share <= 1), None)
    if not place:
        return None if place is None else points[0].at
    before, here = shares[place - 1], shares[place]
    part = math.log(before) / math.log(before / here) if here > 0 else (before - 1) / (before - here)
    return points[place - 1].at + part * (points[place].at - points[place - 1].at)
