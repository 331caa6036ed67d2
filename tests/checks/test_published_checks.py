"""Every published figure of this folder is met within its tolerance, or missed by no more than it says."""

from __future__ import annotations

import pytest
import yaml

from tests.checks.conftest import HERE, Bench, Check, published_checks
from tests.formula.phone_machine import HANDS, Hand

CHECKS = published_checks()
ONLY_CHECKED = HERE / "sources" / "only_checked.yml"


def _within(printed: Bench, check: Check, text: str, expected: float) -> float:
    """A tolerance in SI: a share of the expected value, or a difference in the check's own measure."""
    if text.endswith("percent"):
        return abs(expected) * float(text.split()[0]) / 100
    measure = printed.workbook.library.measures[check.measure]
    return printed.workbook.book.read(text, measure, difference=True)


@pytest.mark.parametrize("hand", HANDS)
@pytest.mark.parametrize("check", CHECKS, ids=[check.name for check in CHECKS])
def test_print_is_met(printed: Bench, check: Check, hand: Hand) -> None:
    day = printed.by(hand, check.set)
    assert check.quantity in day["values"], day["refused"][check.quantity]
    measure = printed.workbook.library.measures[check.measure]
    expected = printed.workbook.book.read(check.expected, measure)
    error = abs(day["values"][check.quantity] - expected)
    if check.missed:
        assert error > _within(printed, check, check.within, expected), "met after all: take out `missed`"
        assert error <= _within(printed, check, check.missed, expected)
    else:
        assert error <= _within(printed, check, check.within, expected), check.because


def test_every_source_is_known(printed: Bench) -> None:
    known = set(printed.workbook.library.sources) | set(yaml.safe_load(ONLY_CHECKED.read_text(encoding="utf-8")))
    cited = {
        source["id"]
        for check in CHECKS
        for source in (check.source if isinstance(check.source, list) else [check.source])
        if isinstance(source, dict)
    }
    assert cited <= known
