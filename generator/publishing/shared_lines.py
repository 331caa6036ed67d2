"""Lines that many texts share, such as the frame of every page, written once for all of them.

Copying such a frame costs LZMA a step for every 273 bytes. Two signs in place of each line are few enough for one step.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

MARK = "\x01"
"""Stands before the sign of a line; no text of ours holds it."""
FIRST = 0x21
_MANY = 20
_LONG = 20


def share_lines(texts: Mapping[str, str]) -> tuple[list[str], dict[str, str]]:
    """The lines that many texts have, and the texts with the mark and a sign for each, beginning with that of `FIRST`.

    Where a text holds the mark itself all are left as they are.
    """
    if any(MARK in text for text in texts.values()):
        return [], dict(texts)
    counts = Counter(line for text in texts.values() for line in text.split("\n"))
    lines = [line for line, count in counts.most_common() if count >= _MANY and len(line) >= _LONG]
    signs = {line: f"{MARK}{chr(FIRST + place)}" for place, line in enumerate(lines)}
    return lines, {name: "\n".join(signs.get(line, line) for line in text.split("\n")) for name, text in texts.items()}
