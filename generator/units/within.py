"""Whether a value lies within two others."""

from __future__ import annotations

_SLACK = 1e-9
"""Relative; the same value written in two units may differ in its last digit."""


def lies_within(value: float, low: float, high: float) -> bool:
    """Whether a value lies from low to high, leaving a last digit to changes of unit."""
    slack = _SLACK * max(abs(low), abs(high))
    return low - slack <= value <= high + slack
