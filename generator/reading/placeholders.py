"""The names in braces inside a text: `{id}`, or `{id first}` for the farm's first units only."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

_BRACES = re.compile(r"\{([^{}]*)\}")
_NAME = re.compile(r"([a-z][a-z0-9_]*)( first)?")


@dataclass(frozen=True)
class Placeholder:
    """A name in braces; `column` of the name from 1. `name` is empty when what stands there is no name."""

    name: str
    first_only: bool
    written: str
    column: int


def placeholders(text: str) -> Iterator[Placeholder]:
    """All of them, in order."""
    for braces in _BRACES.finditer(text):
        match = _NAME.fullmatch(braces[1])
        name, first = (match[1], bool(match[2])) if match else ("", False)
        yield Placeholder(name, first, braces[0], braces.start(1) + 1)


def stray_brace(text: str) -> int | None:
    """The column of a brace that has no partner, from 1; None when all are paired."""
    rest = _BRACES.sub(lambda braces: " " * len(braces[0]), text)
    return next((column for column, character in enumerate(rest, 1) if character in "{}"), None)
