"""Names that formulas about a day may use: what the entries of each reading come to.

`_number`, `_began` and `_ended` (seconds past the midnight before the day began) are there for every reading. With a
measure: `_first`, `_last`, `_mean`; `_total` where it adds up; `_low` and `_high` where it has limits; `_reached`, the
seconds from the first reading until a limit was passed, where it has a curve. Things read one by one, such as lots,
give the mean of theirs.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from itertools import groupby
from statistics import fmean

from generator.formula import Measured, Word
from generator.model.library import Library
from generator.model.record import Logged
from generator.records.curve import Point, reached_at
from generator.records.entry import Entry, is_named_after, standing
from generator.units import UnitBook

Kinds = Mapping[str, Measured | Word]
Values = Mapping[str, float | str]
Series = Sequence[Entry]


def figure_kinds(library: Library, book: UnitBook) -> Kinds:
    """Every name, with what it measures."""
    bare, time = Measured(), Measured(book.dimension("s")) if "s" in book.units else Measured()
    kinds: dict[str, Measured | Word] = {}
    for name, item in library.readings.items():
        kinds |= {f"{name}_number": bare, f"{name}_began": time, f"{name}_ended": time}
        if item.measure:
            measure = library.measures[item.measure]
            kind = Measured(book.dimension(measure.unit), measure.point)
            ends = [*("first", "last", "mean"), *(["total"] if item.adds_up else [])]
            ends += [end for end in ("low", "high") if getattr(item, end)]
            kinds |= {f"{name}_{end}": kind for end in ends}
        if item.curve:
            kinds[f"{name}_reached"] = time
    return kinds


@dataclass(frozen=True)
class Figures:
    """What one day's entries come to, by name; what nobody wrote down has no figure."""

    values: dict[str, float]
    entries: dict[str, tuple[Entry, ...]]
    """The entries behind each reading."""


def figures_of(entries: Sequence[Entry], library: Library, plan: Values) -> Figures:
    """The figures of the entries that count, of one run. `plan` holds what curves near where nobody has read it."""
    counting = standing(entries)
    by_reading: dict[str, tuple[Entry, ...]] = {}
    values: dict[str, float] = {}
    for name in library.readings:
        by_reading[name] = tuple(each for each in counting if each.get("of") == name and each["kind"] in _KINDS)
    for name, item in library.readings.items():
        found = by_reading[name]
        if found:
            values |= _of_reading(name, item, found)
        elif item.none_if_silent:
            values |= {f"{name}_number": 0, f"{name}_total": 0}
        if found and item.curve and (reached := _reached(item, found, by_reading, plan)):
            values[f"{name}_reached"] = fmean(reached)
    return Figures(values, by_reading)


_KINDS = ("reading", "count", "mark")


def _of_reading(name: str, item: Logged, found: Series) -> dict[str, float]:
    seconds = [_seconds_of_day(entry) for entry in found]
    values: dict[str, float] = {"number": len(found), "began": seconds[0], "ended": seconds[-1]}
    measured = [entry for entry in found if "value" in entry]
    if measured:
        series = list(_series(measured))
        values["first"] = fmean(each[0]["value"] for each in series)
        values["last"] = fmean(each[-1]["value"] for each in series)
        values["mean"] = fmean(entry["value"] for entry in measured)
        limits = [entry.get("limit", {}) for entry in measured]
        for side in ("low", "high"):
            known = [limit[side] for limit in limits if side in limit]
            values |= {side: fmean(known)} if known else {}
        if item.adds_up:
            values["total"] = sum(entry["value"] for entry in measured)
    return {f"{name}_{end}": value for end, value in values.items()}


def _reached(item: Logged, found: Series, by_reading: Mapping[str, Series], plan: Values) -> list[float]:
    """Seconds from the first reading of each thing until its limit was passed; nothing for those that never did."""
    times = []
    for series in _series(found):
        toward = toward_of(item, series[0], by_reading, plan)
        limit = next(
            (
                each["limit"][side]
                for each in reversed(series)
                if "limit" in each
                for side in ("high", "low")
                if side in each["limit"]
            ),
            None,
        )
        points = [Point(entry["at"], entry["value"]) for entry in series if "value" in entry]
        if toward is None or limit is None or not points:
            continue
        at = reached_at(points, toward, limit)
        if at is not None and at > points[0].at:
            times.append((at - points[0].at) / 1000)
    return times


def toward_of(item: Logged, thing: Entry, by_reading: Mapping[str, Series], plan: Values) -> float | None:
    """What a curve nears: the mean of that reading by the thing's name, else of its lot, else of any, else planned."""
    if item.curve is None:
        return None
    read = [entry for entry in by_reading.get(item.curve.toward or "", ()) if "value" in entry]
    of_lot = [entry for entry in read if entry.get("lot", "") == thing.get("lot", "")]
    near = [each for each in of_lot if is_named_after(thing.get("name", ""), each.get("name", ""))] or of_lot or read
    planned = plan.get(item.curve.otherwise)
    return fmean(entry["value"] for entry in near) if near else planned if isinstance(planned, int | float) else None


def _series(found: Series) -> Iterator[list[Entry]]:
    """Entries of each thing read, in order."""
    key: Callable[[Entry], tuple[str, str]] = lambda entry: (entry.get("lot", ""), entry.get("name", ""))  # noqa: E731
    for _, series in groupby(sorted(found, key=key), key=key):
        yield list(series)


def _seconds_of_day(entry: Entry) -> float:
    """Seconds since the midnight before the run began, by the phone's wall clock."""
    try:
        midnight = datetime.fromisoformat(entry["run"][:10]).replace(tzinfo=UTC).timestamp()
    except ValueError:
        midnight = entry["at"] // 86_400_000 * 86_400
    return entry["at"] / 1000 + entry["zone"] * 60 - midnight
