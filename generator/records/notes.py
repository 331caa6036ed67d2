"""What a reader must know of a record before trusting it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from generator.records.days import RecordedDay
from generator.records.entry import phone_of
from generator.records.merging import clashes, clock_offsets, set_back
from generator.telling.words import Words


def notes_on(day: RecordedDay, word: Words, clock: Callable[[float, int], str]) -> Iterator[str]:
    """Clocks that differ or were set back, entries that clash, readings nobody knows, a plan that is missing."""
    if day.frozen is None:
        yield word("record_no_plan")
    for offset in clock_offsets(day.entries):
        ahead = (offset.phone, offset.other) if offset.seconds > 0 else (offset.other, offset.phone)
        minutes, seconds = divmod(round(abs(offset.seconds)), 60)
        kind = "record_clock" if offset.sure else "record_clock_least"
        yield word(kind, phone=ahead[0], other=ahead[1], time=f"{minutes}:{seconds:02}")
    for phone, entry in {phone_of(entry): entry for entry in set_back(day.entries)}.items():
        yield word("record_set_back", phone=phone, time=clock(entry["at"], entry["zone"]))
    for identity in clashes(day.entries):
        yield word("record_clash", id=identity)
    known = day.book.workbook.library.readings
    for of in sorted({entry["of"] for entry in day.entries if entry["kind"] in ("reading", "count", "mark")}):
        if of not in known:
            yield word("record_unknown", of=of)
    for entry in day.standing:
        if entry["kind"] == "merge":
            yield word("record_taken_in", count=entry["taken"], phone=entry["phone"]) + f" ({phone_of(entry)})"
