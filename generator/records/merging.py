"""Records brought together: the union of their entries. `merge.js` is the same, function for function."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

from generator.records.entry import Entry, canonical, clock_of, counter_of, in_order, phone_of

MINUTE = 60


class Offset(NamedTuple):
    """The clock of `other` is ahead of that of `phone` by so much; `sure` where each took in the other's record."""

    phone: str
    other: str
    seconds: float
    sure: bool


def merge(*lists: Iterable[Entry]) -> list[Entry]:
    """All entries of all lists, each once, in order."""
    return in_order({canonical(entry): entry for entries in lists for entry in entries}.values())


def clashes(entries: Iterable[Entry]) -> list[str]:
    """Identities under which two entries say different things: both are kept, and a person looks."""
    counts = Counter(entry["id"] for entry in merge(entries))
    return sorted(identity for identity, count in counts.items() if count > 1)


def clock_offsets(entries: Iterable[Entry]) -> list[Offset]:
    """By how much clocks differ, more than a minute only, told from the merges of a record.

    Where two phones took in each other's files, the time on the way cancels out. Where only one did, all that is sure
    is that a file cannot arrive before it was sent.
    """
    gaps: dict[tuple[str, str], float] = {}
    for entry in in_order(entries):
        if entry["kind"] == "merge":
            pair = phone_of(entry), entry["phone"]
            gaps[pair] = min(gaps.get(pair, math.inf), (entry["at"] - entry["sent"]) / 1000)
    found = []
    for (phone, other), gap in sorted(gaps.items()):
        back = gaps.get((other, phone))
        if back is not None and phone > other:
            continue
        seconds = -gap if back is None else (back - gap) / 2
        if abs(seconds) > MINUTE and (back is not None or gap < 0):
            found.append(Offset(phone, other, seconds, back is not None))
    return found


def set_back(entries: Iterable[Entry]) -> list[Entry]:
    """Entries of one phone whose clock was set back before them."""
    latest: dict[str, int] = {}
    found = []
    for entry in sorted(in_order(entries), key=counter_of):
        before = latest.get(phone_of(entry), 0)
        latest[phone_of(entry)] = max(before, clock_of(entry))
        if clock_of(entry) < before - MINUTE * 1000:
            found.append(entry)
    return found
