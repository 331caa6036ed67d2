"""Every published figure of this folder is met within its tolerance, or missed by no more than it says."""

from __future__ import annotations

import pytest

from tests.checks.conftest import Bench, Check, published_checks

CHECKS = published_checks()


def _within(printed: Bench, check: Check, text: str, expected: float) -> float:
    """A tolerance in SI: a share of the expected value, or a difference in the check's own measure."""
    if text.endswith("percent"):
        return abs(expected) * float(text.split()[0]) / 100
    measure = printed.workbook.library.measures[check.measure]
    return printed.workbook.book.read(text, measure, difference=True)


@pytest.mark.parametrize("check", CHECKS, ids=[check.name for check in CHECKS])
def test_in_python(printed: Bench, check: Check) -> None:
    day = printed.run(check.set)
    assert check.quantity in day.values, day.refused[check.quantity].sentence
    found = day.values[check.quantity]
    measure = printed.workbook.library.measures[check.measure]
    expected = printed.workbook.book.read(check.expected, measure)
    assert isinstance(found, int | float)
    error = abs(found - expected)
    if check.missed:
        assert error > _within(printed, check, check.within, expected), f"{check.what} is met after all: take out `missed`"
        assert error <= _within(printed, check, check.missed, expected)
    else:
        assert error <= _within(printed, check, check.within, expected), check.because
