"""The season book: every entry taken in, in one SQLite file that can be made again from the records at any time."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from contextlib import closing, contextmanager
from pathlib import Path
from typing import NamedTuple

from generator.problems import Place, Problem, ProblemsFound
from generator.records.days import RecordBook, RecordedDay
from generator.records.entry import Entry, canonical
from generator.records.merging import merge

_TABLES = """
CREATE TABLE IF NOT EXISTS entries (
  canonical TEXT PRIMARY KEY, id TEXT NOT NULL, run TEXT NOT NULL, kind TEXT NOT NULL, at INTEGER NOT NULL,
  zone INTEGER NOT NULL, "of" TEXT, lot TEXT, who TEXT, value REAL, written TEXT, text TEXT, corrects TEXT
) STRICT;
CREATE TABLE IF NOT EXISTS tallies (
  run TEXT NOT NULL, day TEXT NOT NULL, tally TEXT NOT NULL, value REAL NOT NULL, plan REAL, PRIMARY KEY (run, tally)
) STRICT;
CREATE VIEW IF NOT EXISTS years AS
  SELECT substr(day, 1, 4) AS year, tally, sum(value) AS value, count(*) AS days FROM tallies GROUP BY year, tally;
"""
_COLUMNS = ("id", "run", "kind", "at", "zone", "of", "lot", "who", "value", "written", "text", "corrects")


class YearSum(NamedTuple):
    """What the days of a year come to; `limit` and `left` are None where there is none."""

    year: str
    tally: str
    days: int
    value: float
    limit: float | None
    left: float | None


def bring_up_to_date(path: Path, book: RecordBook, entries: Iterable[Entry]) -> list[RecordedDay]:
    """Takes entries into the season book, and works its days out anew. Returns all days it knows."""
    with _opened(path) as season:
        rows = [(canonical(entry), *(entry.get(column) for column in _COLUMNS)) for entry in entries]
        marks = ", ".join("?" * (len(_COLUMNS) + 1))
        season.executemany(f"INSERT OR IGNORE INTO entries VALUES ({marks})", rows)
        kept = [json.loads(text) for (text,) in season.execute("SELECT canonical FROM entries")]
        days = book.days(merge(kept))
        season.execute("DELETE FROM tallies")
        season.executemany("INSERT INTO tallies VALUES (?, ?, ?, ?, ?)", (row for day in days for row in _rows(day)))
    return days


def years(path: Path, book: RecordBook, days: Sequence[RecordedDay]) -> list[YearSum]:
    """The yearly sums of the tallies that have one, against their limits as the year's last day had them."""
    library, found = book.workbook.library, []
    with _opened(path) as season:
        sums = {(year, tally): (value, count) for year, tally, value, count in season.execute("SELECT * FROM years")}
    for year in sorted({day.date[:4] for day in days}):
        last = [day for day in days if day.date.startswith(year)][-1]
        for name, tally in library.tallies.items():
            if not tally.yearly or (year, name) not in sums:
                continue
            value, count = sums[year, name]
            limit = last.plan.get(tally.limit or "")
            limit = limit if isinstance(limit, int | float) and limit > 0 else None
            found.append(YearSum(year, name, count, value, limit, None if limit is None else limit - value))
    return found


def _rows(day: RecordedDay) -> Iterator[tuple[str, str, str, float, float | None]]:
    tallies = day.book.workbook.library.tallies
    for name, value in day.tallies.items():
        plan = day.plan.get(tallies[name].plan or "")
        yield day.run, day.date, name, value, float(plan) if isinstance(plan, int | float) else None


@contextmanager
def _opened(path: Path) -> Iterator[sqlite3.Connection]:
    """The book, changed as a whole or not at all. Raises ProblemsFound where the file is something else."""
    hint = "move it away; the season book is made again from the records"
    try:
        with closing(sqlite3.connect(path)) as season, season:
            season.executescript(_TABLES)
            yield season
    except sqlite3.Error as fault:
        raise ProblemsFound([Problem(Place(str(path)), f"the season book cannot be used: {fault}", hint)]) from None
