"""Entries in words: values with their units, limits, verdicts, times and people."""

from __future__ import annotations

from generator.model.record import Logged
from generator.records.days import RecordedDay
from generator.records.entry import Entry, Limit, phone_of
from generator.records.judging import verdict_of
from generator.records.table import local_time
from generator.telling.edition import Edition
from generator.telling.words import Words
from generator.units.showing import show_both


class Saying:
    """Says the entries of one day in the language and units of an edition."""

    def __init__(self, edition: Edition, words: Words, day: RecordedDay) -> None:
        self._edition = edition
        self._words = words
        self._day = day
        self._items = edition.library.readings

    def title(self, entry: Entry) -> str:
        """What was read, and which one of them."""
        item = self._item(entry)
        title = self._edition.translate(item.title) if item else entry.get("of", entry["kind"])
        one = f"{self._edition.translate(item.one)} " if item and item.one else ""
        return f"{title}: {one}{entry['name']}" if "name" in entry else title

    def time(self, entry: Entry) -> str:
        """By the phone's wall clock, with the date where that is another; and when it was written, if later."""
        time = self.clock(entry["at"], entry["zone"])
        if "made" not in entry:
            return time
        kind = "record_corrected_at" if "corrects" in entry else "record_written_at"
        return self._words(kind, time=time, made=self.clock(entry["made"], entry["zone"]))

    def clock(self, at: float, zone: int) -> str:
        """A time of day, or a date with it."""
        date, time = local_time(at, zone).split(" ")
        told = time[:5].removeprefix("0")
        return told if date == self._day.date else f"{date} {told}"

    def who(self, entry: Entry) -> str:
        """The person, or at least the phone."""
        return entry.get("who") or self._words("record_by_phone", phone=phone_of(entry))

    def value(self, entry: Entry) -> str:
        """In both systems of units; as it was typed where this content does not know it."""
        item = self._item(entry)
        if "value" not in entry or item is None or item.measure is None:
            return entry.get("written", "")
        return self.measured(entry["value"], item.measure)

    def measured(self, value: float, measure: str) -> str:
        """An SI value in both systems of units."""
        edition = self._edition
        shown = edition.library.measures[measure]
        return show_both(value, shown, edition.first, edition.book, None, edition.translate)

    def limit(self, entry: Entry) -> str:
        """The limits that were in force."""
        limit, item = entry.get("limit", Limit()), self._item(entry)
        if item is None or item.measure is None:
            return ""
        sides = {side: self.measured(limit[side], item.measure) for side in ("low", "high") if side in limit}
        name = {0: "record_free", 2: "record_between"}.get(
            len(sides), "record_least" if "low" in sides else "record_most"
        )
        said = self._words(name, low=sides.get("low", ""), high=sides.get("high", ""))
        by = limit.get("by")
        return said if by is None else self._words("record_by", limit=said, time=self.clock(by, entry["zone"]))

    def verdict(self, entry: Entry) -> str:
        """Inside, on the way or outside."""
        return self._words(f"record_{verdict_of(entry)}") if "limit" in entry else ""

    def reason(self, entry: Entry) -> str:
        """The reason given with one tap."""
        item, reason = self._item(entry), entry.get("reason", "")
        return self._edition.translate(item.reasons[reason]) if item and reason in item.reasons else reason

    def _item(self, entry: Entry) -> Logged | None:
        return self._items.get(entry.get("of", ""))
