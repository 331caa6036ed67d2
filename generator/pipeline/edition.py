"""Which version this is. The date is that of the newest version in CHANGELOG.md, never that of the build,
so that the same content gives the same bytes on every machine and a phone is not told of updates that are none."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from generator.problems import Place, Problem, ProblemsFound

_HEADING = re.compile(r"^## (?P<version>\S+) · (?P<date>\d{4}-\d\d-\d\d)$", re.MULTILINE)


@dataclass(frozen=True)
class Edition:
    """A version and its day."""

    version: str
    date: datetime


def read_edition(changes: Path) -> Edition:
    """The newest edition that the list of changes names. Raises ProblemsFound where it names none."""
    found = _HEADING.search(changes.read_text(encoding="utf-8"))
    try:
        if found:
            return Edition(found["version"], datetime.fromisoformat(found["date"]).replace(tzinfo=UTC))
    except ValueError:
        pass
    hint = "write a heading such as `## 1.2.0 · 2026-05-31`"
    raise ProblemsFound([Problem(Place(changes.name), "no version with its date", hint)])
