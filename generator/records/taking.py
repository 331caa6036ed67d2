"""A record file taken in as far as it is sound. `record_check.js` is the same, function for function."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from generator.records.entry import Entry
from generator.records.shape import Fault, fault_of, kind_of, record_schema
from generator.units.within import lies_within

MOST_CHARACTERS = 16_000_000
MOST_FAULTS = 50
Ranges = Mapping[str, tuple[float, float]]
"""What each reading can be at all, in SI."""


@dataclass
class Taken:
    """What a file gave. `faults` has the place of each in the file, from 1; nought means the whole file."""

    phone: str = ""
    clock: int = 0
    entries: list[Entry] = field(default_factory=list)
    faults: list[tuple[int, Fault]] = field(default_factory=list)
    refused: int = 0
    """How many entries were not taken, also those past the first faults told."""


def take_file(path: Path, ranges: Ranges) -> Taken:
    """What can be taken from a file. Raises OSError where it cannot be read at all."""
    if path.stat().st_size > 4 * MOST_CHARACTERS:
        return _refuse("too_big")
    try:
        return take_text(path.read_bytes().decode("utf-8-sig"), ranges)
    except UnicodeDecodeError:
        return _refuse("not_json")


def take_text(text: str, ranges: Ranges) -> Taken:
    """What can be taken from a file's text. Where the file as a whole is refused there is one fault and no entry."""
    if len(text) > MOST_CHARACTERS:
        return _refuse("too_big")
    try:
        file = json.loads(text, parse_constant=_refuse_constant, parse_int=_number, parse_float=_number)
    except (ValueError, RecursionError):
        return _refuse("not_json")
    if code := _what_is_wrong(file):
        return _refuse(code)
    taken = Taken(file["phone"], file["clock"])
    for place, entry in enumerate(file["entries"], 1):
        fault = fault_of(entry, record_schema()["$defs"]["entry"], "entry") or _out_of_reach(entry, ranges)
        if fault is None:
            taken.entries.append(entry)
            continue
        taken.refused += 1
        if len(taken.faults) < MOST_FAULTS:
            taken.faults.append((place, fault))
    return taken


def _refuse(code: str) -> Taken:
    return Taken(faults=[(0, Fault(code, ""))])


def _refuse_constant(name: str) -> float:
    raise ValueError(f"{name} is no JSON")


def _number(text: str) -> float:
    """As the phone has it: a double, which is an int where it has no fraction."""
    number = float(text)
    return int(number) if number.is_integer() else number


def _what_is_wrong(file: Any) -> str | None:  # noqa: ANN401 - JSON
    """Why the file as a whole is not taken."""
    properties = record_schema()["properties"]
    if kind_of(file) != "object" or file.get("format") != properties["format"]["const"]:
        return "not_ours"
    if kind_of(file.get("version")) == "integer" and file["version"] > max(properties["version"]["enum"]):
        return "newer"
    entries = file.get("entries")
    if isinstance(entries, list) and len(entries) > properties["entries"]["maxItems"]:
        return "too_many"
    if not isinstance(entries, list) or fault_of({**file, "entries": []}, record_schema(), ""):
        return "bad_head"
    return None


def _out_of_reach(entry: Entry, ranges: Ranges) -> Fault | None:
    if entry.get("corrects") == entry["id"]:
        return Fault("corrects_itself", "corrects")
    if "value" not in entry or entry.get("of") not in ranges:
        return None
    low, high = ranges[entry["of"]]
    return None if lies_within(entry["value"], low, high) else Fault("impossible", "value")
