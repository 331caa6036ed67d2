"""One entry of a record, and the order of entries. `records.js` is the same, function for function."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from typing import Any, TypedDict


class Limit(TypedDict, total=False):
    """SI units; `by` in milliseconds since 1970."""

    low: float
    high: float
    by: int


class Entry(TypedDict, total=False):
    """The fields of the schema."""

    id: str
    run: str
    kind: str
    at: int
    made: int
    zone: int
    who: str
    lot: str
    of: str
    name: str
    value: float
    written: str
    limit: Limit
    reason: str
    text: str
    step: str
    prints: Mapping[str, str]
    values: Mapping[str, float | str]
    ends: int
    phone: str
    sent: int
    taken: int
    corrects: str
    answers: str
    gone: bool


def phone_of(entry: Entry) -> str:
    """The phone that an entry was made on."""
    return entry["id"].split("-")[0]


def counter_of(entry: Entry) -> int:
    """Its running number there."""
    return int(entry["id"].split("-")[1])


def is_named_after(name: str, of: str) -> bool:
    """Whether what is called `2 big` belongs to what is called `2`."""
    return f"{name} ".startswith(f"{of} ")


def clock_of(entry: Entry) -> int:
    """What the phone's clock said when it was written down."""
    return entry.get("made", entry["at"])


def canonical(entry: Any) -> str:  # noqa: ANN401 - JSON
    """An entry as one text, the same whatever order its fields came in."""
    return json.dumps(entry, sort_keys=True, ensure_ascii=False, separators=(",", ":"))


def in_order(entries: Iterable[Entry]) -> list[Entry]:
    """Entries by the times that they tell of.

    Those of one phone stand in the order in which it made them even where its clock went back; only what names an
    earlier time itself stands there.
    """
    latest: dict[str, int] = {}
    placed = []
    for entry in sorted(entries, key=lambda each: (counter_of(each), clock_of(each))):
        phone = phone_of(entry)
        latest[phone] = max(clock_of(entry), latest.get(phone, 0))
        at = entry["at"] if "made" in entry else latest[phone]
        text = canonical(entry).encode("utf-16-be", "surrogatepass")  # JavaScript compares texts by these units
        placed.append((at, phone, counter_of(entry), text, entry))
    return [entry for *_, entry in sorted(placed, key=lambda place: place[:4])]


def standing(entries: Sequence[Entry]) -> list[Entry]:
    """The entries that count, in order: neither corrected nor taken back.

    Where two phones corrected one entry without knowing of each other, the later correction counts alone.
    """
    corrected = {(entry["run"], entry["corrects"]) for entry in entries if "corrects" in entry}
    left = [entry for entry in entries if (entry["run"], entry["id"]) not in corrected]
    if len(corrected) < sum("corrects" in entry for entry in entries):
        left = _latest_corrections(entries, left)
    return in_order(entry for entry in left if "gone" not in entry)


def _latest_corrections(entries: Sequence[Entry], left: Sequence[Entry]) -> list[Entry]:
    """Of those that come of one entry, by however many corrections, the last."""
    ranked = sorted(entries, key=lambda entry: (clock_of(entry), phone_of(entry), counter_of(entry), canonical(entry)))
    by_id = {(entry["run"], entry["id"]): entry for entry in ranked}

    def first_of(entry: Entry) -> tuple[str, str]:
        name, seen = (entry["run"], entry["id"]), set[tuple[str, str]]()
        while name in by_id and "corrects" in by_id[name] and name not in seen:
            seen.add(name)
            name = (entry["run"], by_id[name]["corrects"])
        return name

    kept = {id(entry) for entry in left}
    last = {first_of(entry): id(entry) for entry in ranked if id(entry) in kept}
    return [entry for entry in left if "corrects" not in entry or last[first_of(entry)] == id(entry)]


def totals(entries: Sequence[Entry]) -> dict[str, float]:
    """What the counts of each thing come to."""
    sums: dict[str, float] = {}
    for entry in standing(entries):
        if entry["kind"] == "count":
            sums[entry["of"]] = sums.get(entry["of"], 0) + entry["value"]
    return sums
