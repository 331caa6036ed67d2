"""The time of day that somebody types means the moment nearest to the one it is about."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.phone.conftest import Ask, machine


@pytest.fixture(scope="module")
def ask() -> Ask:
    return machine("mark_times.js")


def moment(text: str) -> float:
    return datetime.fromisoformat(text).timestamp() * 1000


@pytest.mark.parametrize(
    ("typed", "near", "now", "meant"),
    [
        ("09:10", "2026-07-04T09:30", "2026-07-04T09:30", "2026-07-04T09:10"),
        ("09:50", "2026-07-04T09:30", "2026-07-04T09:30", None),  # not yet
        ("21:10", "2026-07-04T09:30", "2026-07-04T09:30", None),  # nine in the evening for nine in the morning
        ("23:50", "2026-07-05T00:20", "2026-07-05T00:20", "2026-07-04T23:50"),
        ("22:30", "2026-07-05T06:00", "2026-07-05T06:00", "2026-07-04T22:30"),
        ("10:15", "2026-07-04T10:00", "2026-07-05T11:00", "2026-07-04T10:15"),  # corrected the day after
        ("00:10", "2026-07-04T23:50", "2026-07-05T11:00", "2026-07-05T00:10"),
        ("", "2026-07-04T10:00", "2026-07-05T11:00", None),
        ("7", "2026-07-04T10:00", "2026-07-05T11:00", None),
    ],
)
def test_times_of_day(ask: Ask, typed: str, near: str, now: str, meant: str | None) -> None:
    found = ask("timeNear(typed, near, now)", typed=typed, near=moment(near), now=moment(now))
    assert found == (None if meant is None else moment(meant))


@given(st.datetimes(datetime(2020, 1, 1), datetime(2040, 1, 1)), st.integers(0, 1439))
def test_it_is_less_than_half_a_day_away_and_shows_what_was_typed(ask: Ask, near: datetime, minutes: int) -> None:
    near = near.replace(second=0, microsecond=0)
    typed, now = f"{minutes // 60:02}:{minutes % 60:02}", near + timedelta(days=1)
    found = ask("timeNear(typed, near, now)", typed=typed, near=near.timestamp() * 1000, now=now.timestamp() * 1000)
    if found is None:  # only what lies just half a day away, or was skipped when summer time began
        assert abs(((minutes - near.hour * 60 - near.minute) + 720) % 1440) <= 60
    else:
        assert abs(found / 1000 - near.timestamp()) < 12 * 3600
