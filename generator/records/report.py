"""The report of a day as texts in tables, ready to be set on paper. Nothing in it is ever taken for markup."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import Any

from generator.records.days import RecordedDay
from generator.records.entry import Entry, clock_of, phone_of
from generator.records.judging import verdict_of
from generator.records.notes import notes_on
from generator.records.saying import Saying
from generator.records.season import YearSum
from generator.telling.edition import Edition
from generator.telling.words import Words
from generator.units.writing import MINUS

Data = dict[str, Any]
Rows = Iterable[Sequence[str]]


class Report:
    """Writes the report of one day."""

    def __init__(self, edition: Edition, day: RecordedDay, years: Sequence[YearSum]) -> None:
        self._edition = edition
        self._day = day
        self._years = [each for each in years if each.year == day.date[:4]]
        self._word = Words(edition)
        self._say = Saying(edition, self._word, day)

    def data(self) -> Data:
        """`title`, `intro` and `sections`, each with `title`, `columns`, the `shares` of their widths, and `rows`.

        Raises ProblemsFound where words are missing.
        """
        farm, day = self._edition.library.this_farm, self._day
        parts = {
            "farm": farm.name,
            "phones": ", ".join(sorted({phone_of(entry) for entry in day.entries})),
            "entries": len(day.entries),
            "count": len(day.entries),
            "standing": len(day.standing),
            "ticks": sum(entry["kind"] == "tick" for entry in day.standing),
        }
        intro = self._word("record_intro", **parts) + (" " + self._word("record_demo") if farm.demo else "")
        sections = [
            self._section("summary", "what actual planned difference", (3, 2, 2, 2), self._tallies()),
            self._section("outside", "time what value limit done", (2, 3, 3, 4, 5), self._outside()),
            self._section("readings", "time what lot value limit verdict who", (2, 4, 1, 3, 4, 2, 2), self._readings()),
            self._section("counts", "what lot value", (6, 2, 2), self._counts()),
            self._section("times", "time what lot who", (2, 5, 2, 2), self._marks()),
            self._section("remarks", "time what who", (2, 10, 3), self._remarks()),
            self._section("changes", "time what value done who", (2, 4, 3, 3, 2), self._changes()),
            self._section("season", "what actual days limit limit_left", (4, 2, 1, 2, 2), self._season()),
            self._section("notes", "what", (1,), ([note] for note in notes_on(day, self._word, self._say.clock))),
        ]
        self._word.stop_at_missing()
        title = self._word("record_title", day=day.date)
        return {"title": title, "intro": intro, "sections": [each for each in sections if each["rows"]]}

    def _section(self, name: str, columns: str, shares: Sequence[int], rows: Rows) -> Data:
        heads = [self._word(f"record_{column}") for column in columns.split()]
        cells = [list(row) for row in rows]
        return {"title": self._word(f"record_{name}"), "columns": heads, "shares": list(shares), "rows": cells}

    def _tallies(self) -> Rows:
        library, day = self._edition.library, self._day
        for name, tally in sorted(library.tallies.items(), key=lambda each: each[1].order):
            if name not in day.tallies:
                continue
            value, plan = day.tallies[name], day.plan.get(tally.plan or "")
            planned, apart = "", ""
            if isinstance(plan, int | float):
                planned = self._say.measured(plan, tally.measure)
                apart = _percent(value / plan - 1) if plan else ""
            yield self._edition.translate(tally.title), self._say.measured(value, tally.measure), planned, apart

    def _outside(self) -> Rows:
        for entry, actions in self._day.outside:
            done = "; ".join(f"{self._say.time(each)} {each['text']} ({self._say.who(each)})" for each in actions)
            told = done or self._word("record_nothing_done")
            yield self._say.time(entry), self._what(entry), self._say.value(entry), self._say.limit(entry), told

    def _readings(self) -> Rows:
        for entry in self._of_kind("reading"):
            say = self._say
            where = (say.time(entry), say.title(entry), entry.get("lot", ""))
            yield *where, say.value(entry), say.limit(entry), say.verdict(entry), say.who(entry)

    def _counts(self) -> Rows:
        sums: dict[tuple[str, str], tuple[Entry, float]] = {}
        for entry in self._of_kind("count"):
            reason = self._say.reason(entry)
            key = self._say.title(entry) + (f", {reason}" if reason else ""), entry.get("lot", "")
            sums[key] = entry, sums.get(key, (entry, 0.0))[1] + entry["value"]
        for (title, lot), (entry, value) in sums.items():
            yield title, lot, self._say.value({**entry, "value": value, "written": f"{value:g}"})

    def _marks(self) -> Rows:
        for entry in self._of_kind("mark"):
            yield self._say.time(entry), self._say.title(entry), entry.get("lot", ""), self._say.who(entry)

    def _remarks(self) -> Rows:
        for entry in self._day.standing:
            if entry["kind"] in ("remark", "sign"):
                signed = self._word("record_signed") if entry["kind"] == "sign" else ""
                text = ". ".join(filter(None, (signed, entry.get("text", ""))))
                yield self._say.time(entry), text, self._say.who(entry)

    def _changes(self) -> Rows:
        old = {entry["id"]: entry for entry in self._day.entries}
        for entry in self._day.entries:
            before = old.get(entry.get("corrects", ""))
            if before is not None and entry["kind"] != "tick":
                at = self._say.clock(entry["at"], entry["zone"])
                now = self._say.value(entry) or entry.get("text", at)
                told = self._word("record_gone") if "gone" in entry else self._word("record_instead", value=now)
                was = self._say.value(before) or before.get("text", self._say.clock(before["at"], before["zone"]))
                yield (
                    self._say.clock(clock_of(entry), entry["zone"]),
                    self._what(before),
                    was,
                    told,
                    self._say.who(entry),
                )

    def _season(self) -> Rows:
        for each in self._years:
            tally = self._edition.library.tallies[each.tally]
            value, limit, left = (
                "" if number is None else self._say.measured(number, tally.measure)
                for number in (each.value, each.limit, each.left)
            )
            yield self._edition.translate(tally.title), value, str(each.days), limit, left

    def _what(self, entry: Entry) -> str:
        verdict = f" ({self._say.verdict(entry)})" if "value" in entry and verdict_of(entry) in ("low", "high") else ""
        lot = f", {entry['lot']}" if "lot" in entry else ""
        return f"{self._say.title(entry)}{lot}{verdict}"

    def _of_kind(self, kind: str) -> Iterable[Entry]:
        return (entry for entry in self._day.standing if entry["kind"] == kind)


def _percent(share: float) -> str:
    whole = math.floor(abs(share) * 100 + 0.5)
    return f"{'+' if share > 0 else MINUS}{whole}%" if whole else "0%"
