"""Records made for tests."""

from __future__ import annotations

import json
from typing import Any

from hypothesis import strategies as st

from generator.pipeline.order import HERE
from generator.records.entry import Entry

FOLDER = HERE / "tests" / "records"
DEMO = (FOLDER / "demo_day_ana.json", FOLDER / "demo_day_ben.json")
"""One invented day on two phones; the clock of the second is two minutes ahead."""
NOON = 1_784_390_400_000
"""2026-07-18, 16:00 UTC, which is noon where the samples were taken."""


def entry(number: int, phone: str = "phoneaaa", **fields: Any) -> Entry:
    """A sound entry; a reading of 60 °C where nothing else is said."""
    kind = fields.pop("kind", "reading")
    about: dict[str, Any] = {"of": "kettle", "value": 333.15, "written": "60 °C"} if kind == "reading" else {}
    fields = {"at": NOON + number * 60_000, "zone": -240, "run": "2026-07-18-demo1", **about, **fields}
    return {"id": f"{phone}-{number}-abcdef", "kind": kind, **fields}  # type: ignore[typeddict-item]


def file_of(*entries: Any, **head: Any) -> str:
    whole = {"format": "day-record", "version": 1, "phone": "phoneaaa", "clock": NOON, "entries": entries, **head}
    return json.dumps(whole)


def sounds() -> st.SearchStrategy[Entry]:
    """Sound entries of a few phones, some of them corrections or taken back, some under one identity."""
    names = st.sampled_from(["phoneaaa", "phonebbb", "phoneccc"])
    numbers = st.integers(1, 12)
    times = st.integers(NOON - 3_600_000, NOON + 3_600_000)
    plain = st.builds(
        lambda name, number, at, value, lot: entry(number, name, at=at, value=value, lot=lot),
        names, numbers, times, st.integers(250, 400), st.sampled_from(["1", "2"]),
    )  # fmt: skip
    corrections = st.builds(
        lambda name, number, at, other, gone: entry(
            number,
            name,
            at=at,
            corrects=f"phoneaaa-{other + (other == number)}-abcdef",
            **({"gone": True} if gone else {}),
        ),
        names, numbers, times, numbers, st.booleans(),
    )  # fmt: skip
    late = st.builds(
        lambda told, made: {**told, "made": made}, st.one_of(plain, corrections), times
    )  # fmt: skip
    counts = st.builds(
        lambda name, number, at, value: entry(number, name, kind="count", of="box", value=value, written="x", at=at),
        names, numbers, times, st.integers(0, 9),
    )  # fmt: skip
    return st.one_of(plain, corrections, counts, late)
