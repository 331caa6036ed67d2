"""Which version this is, and of which day.

The day is that of the newest version in CHANGELOG.md, never that of the build: the same content then gives the same
bytes on every machine, and no phone is told of an update that is none.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from generator.problems import Place, Problem, ProblemsFound

_HEADING = re.compile(r"^## (?P<version>\S+) · (?P<day>\d{4}-\d\d-\d\d)$", re.MULTILINE)


@dataclass(frozen=True)
class Release:
    """A version and its day."""

    version: str
    day: datetime


def read_release(changes: Path) -> Release:
    """The newest version that the list of changes names. Raises ProblemsFound where it names none."""
    found = _HEADING.search(changes.read_text(encoding="utf-8"))
    try:
        if found:
            return Release(found["version"], datetime.fromisoformat(found["day"]).replace(tzinfo=UTC))
    except ValueError:
        pass
    hint = "write a heading such as `## 1.2.0 · 2026-05-31`"
    raise ProblemsFound([Problem(Place(changes.name), "no version with its day", hint)])
