"""Readings against their limits, and readings that are due. `judging.js` is the same, function for function."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from typing import Literal, NamedTuple

from generator.model.record import Logged
from generator.records.entry import Entry, Limit, is_named_after, standing

Verdict = Literal["free", "inside", "on_the_way", "low", "high"]
_SLACK = 1e-9


class Due(NamedTuple):
    """When a reading is to be taken next, in milliseconds since 1970."""

    of: str
    lot: str
    name: str
    at: float


def limit_for(item: Logged, values: Mapping[str, float | str], entries: Sequence[Entry], lot: str = "") -> Limit:
    """The limits in force for a reading of a lot, from the day's values; what is refused there limits nothing."""
    limit = Limit()
    low, high, allowed = (values.get(name or "") for name in (item.low, item.high, item.within))
    if isinstance(low, int | float):
        limit["low"] = low
    if isinstance(high, int | float):
        limit["high"] = high
    first = _firsts(item.since, item.per_lot, standing(entries)).get(lot if item.per_lot else "")
    if isinstance(allowed, int | float) and first is not None:
        limit["by"] = math.floor(first["at"] + allowed * 1000 + 0.5)
    return limit


def judge(value: float, limit: Limit | None = None, at: float = math.inf) -> Verdict:
    """Where a value lies.

    While the time allowed runs, what must still be reached is on the way: the upper limit, or the lower where there is
    no upper one.
    """
    low, high, by = (limit or {}).get("low"), (limit or {}).get("high"), (limit or {}).get("by")
    early = by is not None and at <= by
    if low is not None and value < low - _slack(low):
        return "on_the_way" if early and high is None else "low"
    if high is not None and value > high + _slack(high):
        return "on_the_way" if early else "high"
    return "free" if low is None and high is None else "inside"


def verdict_of(entry: Entry) -> Verdict:
    """Where an entry's value lies within the limits that were in force."""
    return judge(entry["value"], entry.get("limit"), entry["at"])


def due(items: Mapping[str, Logged], values: Mapping[str, float | str], entries: Sequence[Entry]) -> list[Due]:
    """When each reading is due next, the most pressing first.

    Each lot, and each name that was read, has its own time; a reading with a time allowed is done once it lies inside
    its limits. What ends the rhythm ends it for all of the lot, or for what it names.
    """
    found, counting = [], standing(entries)
    for of, item in items.items():
        every = values.get(item.rhythm or "")
        if not isinstance(every, int | float):
            continue
        for lot, first in _firsts(item.since or of, item.per_lot, counting).items():
            later = [each for each in counting[counting.index(first) :] if _in_lot(item, each, lot)]
            mine = [each for each in later if each.get("of") == of]
            ends = [each for each in later if each.get("of") in item.until]
            if any("name" not in each for each in ends):
                continue
            lasts = {each.get("name", ""): each for each in mine}
            done = {
                name
                for name, last in lasts.items()
                if _is_over(last, later, ends) or (item.within and _is_inside(last))
            }
            waiting = {name: last["at"] for name, last in lasts.items() if name not in done}
            waiting = waiting if mine else {"": first["at"]}
            found += [Due(of, lot, name, at + every * 1000) for name, at in waiting.items()]
    return sorted(found, key=lambda each: (each.at, each.of + each.lot + each.name))


def _is_over(last: Entry, later: Sequence[Entry], ends: Sequence[Entry]) -> bool:
    after = [end for end in ends if end["at"] >= last["at"] or later.index(end) > later.index(last)]
    return any(is_named_after(last.get("name", ""), end["name"]) for end in after)


def _is_inside(entry: Entry) -> bool:
    return "value" in entry and verdict_of(entry) == "inside"


def _slack(limit: float) -> float:
    return _SLACK * max(1, abs(limit))


def _firsts(since: str | None, per_lot: bool, counting: Iterable[Entry]) -> dict[str, Entry]:
    """With what each lot began, or the day under the empty name."""
    firsts: dict[str, Entry] = {}
    for entry in counting:
        if since is not None and entry.get("of") == since:
            firsts.setdefault(entry.get("lot", "") if per_lot else "", entry)
    return firsts


def _in_lot(item: Logged, entry: Entry, lot: str) -> bool:
    return not item.per_lot or entry.get("lot", "") == lot
