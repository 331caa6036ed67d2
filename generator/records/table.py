"""A record as a table for spreadsheets. `record_table.js` is the same, cell for cell."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Sequence
from datetime import UTC, datetime
from decimal import Decimal

from generator.records.entry import Entry, in_order, standing
from generator.records.judging import verdict_of

COLUMNS = (
    *(
        "time",
        "made",
        "run",
        "kind",
        "lot",
        "of",
        "name",
        "written",
        "value_si",
        "low_si",
        "high_si",
        "verdict",
        "counts",
    ),
    *("who", "reason", "text", "id", "corrects", "answers"),
)


def to_table(entries: Sequence[Entry]) -> str:
    """Comma-separated, one entry a row; text that a spreadsheet could take for a formula is made harmless."""
    counted = {id(entry) for entry in standing(entries)}
    made = io.StringIO()
    writer = csv.writer(made)
    writer.writerow(COLUMNS)
    for entry in in_order(entries):
        writer.writerow([_cell(column, entry, id(entry) in counted) for column in COLUMNS])
    return made.getvalue()


def local_time(at: float, zone: int) -> str:
    """The wall clock of the phone, `zone` minutes ahead of UTC."""
    return datetime.fromtimestamp(at // 1000 + zone * 60, UTC).strftime("%Y-%m-%d %H:%M:%S")


def _cell(column: str, entry: Entry, counts: bool) -> str:
    if column == "time":
        return local_time(entry["at"], entry["zone"])
    if column == "made":
        return local_time(entry["made"], entry["zone"]) if "made" in entry else ""
    if column == "value_si":
        return _number(entry.get("value"))
    if column in ("low_si", "high_si"):
        return _number(entry.get("limit", {}).get(column.removesuffix("_si")))
    if column == "verdict":
        return verdict_of(entry) if "value" in entry else ""
    if column == "counts":
        return "yes" if counts else "no"
    return _harmless(str(entry.get(column, "")))


def _number(value: object) -> str:
    """As JavaScript writes it, so that both hands give the same table."""
    if not isinstance(value, int | float):
        return ""
    text = repr(float(value)).removesuffix(".0")
    if "e" in text and 1e-6 <= abs(value) < 1e21:
        return f"{Decimal(text):f}"
    return re.sub(r"e([+-])0+", r"e\1", text)


def _harmless(text: str) -> str:
    return f"'{text}" if re.match(r"[=+\-@\t\r]", text) else text
