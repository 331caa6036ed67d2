"""Lines that many texts share, such as the frame of every page, written once for all of them.

Copying such a frame costs LZMA a step for every 273 bytes. Two signs in place of each line are few enough for one step.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

MARK = "\x01"
"""Stands before the sign of a line; no text of ours holds it."""
FIRST = 0x21
_MANY, _LONG = 20, 4
_SOME, _VERY_LONG = 8, 2000
"""A sheet that some pages have inside is one line. As tried out: fewer copies are better left where they are."""


def share_lines(texts: Mapping[str, str]) -> tuple[list[str], dict[str, str]]:
    """The lines that many texts have, and the texts with the mark and a sign for each, beginning with that of `FIRST`.

    Where a text holds the mark itself all are left as they are.
    """
    if any(MARK in text for text in texts.values()):
        return [], dict(texts)
    counts = Counter(line for text in texts.values() for line in text.split("\n"))
    lines = [line for line, count in counts.most_common() if _is_worth_a_sign(count, len(line))]
    signs = {line: f"{MARK}{chr(FIRST + place)}" for place, line in enumerate(lines)}
    return lines, {name: "\n".join(signs.get(line, line) for line in text.split("\n")) for name, text in texts.items()}


def _is_worth_a_sign(count: int, length: int) -> bool:
    return (count >= _MANY and length >= _LONG) or (count >= _SOME and length >= _VERY_LONG)
