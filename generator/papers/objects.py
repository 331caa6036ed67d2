"""A PDF as its numbered objects, each with the objects that it names.

See ISO 32000-1, 7.3.10 (objects and references to them).
"""

from __future__ import annotations

import re
import zlib
from collections import deque
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import reduce

_DEEP = 24
"""Brackets inside a string may stand unescaped where each has its partner, one pair inside another."""
STRING = reduce(lambda inside, _: rb"\((?:[^\\()]++|\\.|" + inside + rb")*+\)", range(_DEEP), rb"(?!)")
_PIECES = re.compile(STRING + rb"|(?<![\d.])(\d+) 0 R", re.DOTALL)
_TRAILER = re.compile(rb"trailer\s*<<(.*)>>\s*startxref", re.DOTALL)
_ROOT, _INFO = re.compile(rb"/Root (\d+) 0 R"), re.compile(rb"/Info (\d+) 0 R")
_LENGTH = re.compile(rb"/Length (\d+)")

Bodies = Mapping[int, bytes]


@dataclass(frozen=True)
class Document:
    """The objects by number, and which of them are the root and what is known of the whole."""

    bodies: Bodies
    root: int
    info: int

    def changed(self, bodies: Bodies) -> Document:
        """The same with other bodies for some numbers; what nothing names any more is not written."""
        return replace(self, bodies={**self.bodies, **bodies})

    def reached(self) -> list[int]:
        """All objects that the root or the info names, directly or through others.

        The near ones come first, so that tags which stand side by side are neighbours here too.
        """
        found = {self.root: True, self.info: True}
        open_ = deque(found)
        while open_:
            for number in named(self.bodies[open_.popleft()]):
                if number not in found:
                    found[number] = True
                    open_.append(number)
        return list(found)


def read_objects(pdf: bytes) -> Document:
    """Takes what Typst writes: one table of places, no updates, nothing encrypted."""
    trailer = _TRAILER.search(pdf)
    assert trailer is not None
    root, info = _ROOT.search(trailer[1]), _INFO.search(trailer[1])
    assert root is not None
    assert info is not None
    table = pdf[int(pdf[pdf.rindex(b"startxref") + 9 :].split()[0]) :]
    lines = re.findall(rb"^(\d{10}) \d{5} ([nf])", table, re.MULTILINE)
    bodies = {number: _body(pdf, int(place)) for number, (place, kind) in enumerate(lines) if kind == b"n"}
    return Document(bodies, int(root[1]), int(info[1]))


def _body(pdf: bytes, place: int) -> bytes:
    """What stands between the head of an object and its end. A stream may hold any bytes, so its length is read."""
    start = pdf.index(b"obj", place) + 3
    end = pdf.index(b"endobj", start)
    head = pdf.find(b"stream\n", start, end)
    if head >= 0 and (length := _LENGTH.search(pdf, start, head)):
        end = pdf.index(b"endobj", head + int(length[1]))
    return pdf[start:end].strip()


def named(body: bytes) -> Iterator[int]:
    """The numbers of the objects that a body names, strings and streams aside."""
    return (int(found[1]) for found in _PIECES.finditer(_head(body)) if found[1])


def renamed(body: bytes, numbers: Mapping[int, int]) -> bytes:
    """The body with new numbers for the objects that it names."""
    head = _head(body)
    return _PIECES.sub(lambda one: b"%d 0 R" % numbers[int(one[1])] if one[1] else one[0], head) + body[len(head) :]


def is_stream(body: bytes) -> bool:
    """Whether the object is a stream of bytes."""
    return body.endswith(b"endstream")


def _head(body: bytes) -> bytes:
    return body[: body.index(b"stream\n")] if is_stream(body) else body


def number_at(pattern: re.Pattern[bytes], body: bytes) -> int:
    """The number that an entry of a body names; the entry is there in whatever Typst writes."""
    found = pattern.search(body)
    assert found is not None, pattern.pattern
    return int(found[1])


def unpacked(stream: bytes) -> bytes:
    """What a stream holds."""
    content = stream[stream.index(b"stream\n") + 7 :]
    return zlib.decompress(content) if b"/FlateDecode" in stream[:400] else content
