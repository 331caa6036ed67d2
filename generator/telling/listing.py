"""A paper as the page of papers lists it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Listed:
    """Where the files of a paper lie below the site, and the code that tells an old print from a new one."""

    id: str
    title: str
    group: str
    code: str
    files: Mapping[str, str]
    """The PDF by size of paper."""
    picture: str
