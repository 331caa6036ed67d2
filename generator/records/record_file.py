"""A record as a file's text, in the format that phones write and read."""

from __future__ import annotations

import json
from collections.abc import Sequence

from generator.records.entry import Entry, in_order
from generator.records.shape import record_schema

MERGED_HERE = "computer"
"""Stands where a phone would name itself."""


def record_text(entries: Sequence[Entry], clock: int) -> str:
    """The file of these entries, one a line."""
    properties = record_schema()["properties"]
    head = {
        "format": properties["format"]["const"],
        "version": max(properties["version"]["enum"]) if any("made" in entry for entry in entries) else 1,
        "phone": MERGED_HERE,
        "clock": clock,
    }
    lines = ",\n".join(json.dumps(entry, ensure_ascii=False, separators=(",", ":")) for entry in in_order(entries))
    return json.dumps(head, separators=(",", ":"))[:-1] + ',"entries":[\n' + lines + "\n]}\n"
