"""Says the same with fewer letters: short numbers on the pages, and no tag whose only work is to hold one other.

See ISO 32000-1, 7.3.4 (strings), 7.8.2 (what draws a page) and 14.7.2 (the tree of tags).
"""

from __future__ import annotations

import re
import zlib
from dataclasses import replace
from functools import lru_cache

from generator.papers.objects import STRING, Bodies, Document

_CONTENTS = re.compile(rb"/Contents (\d+) 0 R")
_PIECES = re.compile(STRING + rb"|-?\d+\.\d+", re.DOTALL)
_ESCAPED = re.compile(rb"\\([0-7]{3}|.)", re.DOTALL)
_LETTERS = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
_TO_ESCAPE = re.compile(rb"[\\()\r]")
_HOLDER = re.compile(rb"/S/Div/P (\d+) 0 R/K\[(\d+) 0 R\]>>")
_EMPTY_LABEL = re.compile(rb"/S/Lbl/P \d+ 0 R(?:/K\[\])?>>")
_KIDS = re.compile(rb"(?<=/K\[)[^\]]*(?=\])")
_PARENT = re.compile(rb"(?<=/P )\d+(?= 0 R)")
_BORDER = re.compile(rb"<</O/Layout/Border[^>]*>>")
_NO_ATTRIBUTES = re.compile(rb"/A\[\]")


def slim(document: Document) -> Document:
    """The same document: every place within a hundredth of a point, tags that hold content all there and in order."""
    bodies = document.bodies
    pages = {int(number) for body in bodies.values() if b"/Type/Page/" in body for number in _CONTENTS.findall(body)}
    shortened = {number: shorter(body) if number in pages else body for number, body in bodies.items()}
    return replace(document, bodies=_unwrapped(shortened))


def shorter(stream: bytes) -> bytes:
    """A packed page with its numbers cut to what a printer can show, and its letters unescaped."""
    drawn = zlib.decompress(stream[stream.index(b"stream\n") + 7 :])
    packed = zlib.compress(_PIECES.sub(_piece, drawn), 9)
    return b"<</Length %d/Filter/FlateDecode>>\nstream\n%s\nendstream" % (len(packed), packed)


def _piece(found: re.Match[bytes]) -> bytes:
    return _text(found[0]) if found[0].startswith(b"(") else _number(found[0])


def _text(text: bytes) -> bytes:
    """A string without needless escapes."""
    plain = _ESCAPED.sub(_letter, text[1:-1])
    return b"(%s)" % _TO_ESCAPE.sub(lambda each: b"\\r" if each[0] == b"\r" else b"\\" + each[0], plain)


@lru_cache(maxsize=100_000)
def _number(text: bytes) -> bytes:
    """A number of one place, of more where it is small and may be a scale or a colour."""
    number = float(text)
    short = (b"%.3f" if abs(number) < 10 else b"%.2f" if abs(number) < 100 else b"%.1f") % number
    short = short.rstrip(b"0").rstrip(b".")
    return b"0" if short in {b"", b"-0"} else short


def _letter(found: re.Match[bytes]) -> bytes:
    code = found[1]
    return bytes([int(code, 8)]) if len(code) == 3 else _LETTERS.get(code, code)


def _unwrapped(bodies: Bodies) -> dict[int, bytes]:
    """Without tags that hold nothing but one other tag, labels that hold nothing, and what tags say about borders."""
    tags = {n: body for n, body in bodies.items() if body.startswith(b"<</Type/StructElem")}
    holders = {n: held for n, body in tags.items() if (held := _HOLDER.search(body)) and int(held[2]) in tags}
    empty = {n for n, body in tags.items() if _EMPTY_LABEL.search(body)}
    down = {n: int(held[2]) for n, held in holders.items()}
    up = {n: int(held[1]) for n, held in holders.items()}
    kept = {n: body for n, body in bodies.items() if n not in holders and n not in empty}
    for n in kept.keys() & tags.keys():
        body = _KIDS.sub(lambda kids: _kids(kids[0], down, empty), kept[n])
        body = _PARENT.sub(lambda parent: b"%d" % _end(int(parent[0]), up), body)
        kept[n] = _NO_ATTRIBUTES.sub(b"", _BORDER.sub(b"", body))
    return kept


def _kids(listed: bytes, down: dict[int, int], empty: set[int]) -> bytes:
    def follow(found: re.Match[bytes]) -> bytes:
        number = _end(int(found[1]), down)
        return b"" if number in empty else b"%d 0 R" % number

    return b" ".join(re.sub(rb"(\d+) 0 R", follow, listed).split(b" ")).strip()


def _end(number: int, chain: dict[int, int]) -> int:
    while number in chain:
        number = chain[number]
    return number
