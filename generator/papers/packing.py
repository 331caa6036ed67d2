"""Packs the small objects of a PDF into compressed streams: its tags make thousands of them.

See ISO 32000-1, 7.5.7 (object streams) and 7.5.8 (cross-reference streams).
"""

from __future__ import annotations

import re
import zlib

from generator.papers.slimming import slim

_TRAILER = re.compile(rb"trailer\s*<<(.*)>>\s*startxref", re.DOTALL)
_LENGTH = re.compile(rb"/Length (\d+)")
_SIZE = re.compile(rb"/Size \d+")
_TOGETHER = 2000
"""Objects to a stream: a reader unpacks a whole stream to get at one of them."""
_PLAIN, _PACKED = 1, 2


def pack(pdf: bytes) -> bytes:
    """The same document in fewer bytes. Takes what Typst writes: one table of places, no updates, nothing encrypted."""
    trailer = _TRAILER.search(pdf)
    assert trailer is not None
    places = _places(pdf)
    bodies = slim({number: _body(pdf, place) for number, place in places.items()})
    small = [number for number, body in bodies.items() if not body.endswith(b"endstream")]
    streams = [number for number, body in bodies.items() if body.endswith(b"endstream")]
    out = bytearray(pdf[: min(places.values())])
    where = {0: (0, 0, 65535)}
    for number in streams:
        where[number] = (_PLAIN, len(out), 0)
        out += _written(number, bodies[number])
    following = max(bodies) + 1
    for first in range(0, len(small), _TOGETHER):
        together = small[first : first + _TOGETHER]
        where[following] = (_PLAIN, len(out), 0)
        where |= {number: (_PACKED, following, index) for index, number in enumerate(together)}
        out += _written(following, _together([(number, bodies[number]) for number in together]))
        following += 1
    where[following] = (_PLAIN, len(out), 0)
    start = len(out)
    out += _written(following, _table(where, _SIZE.sub(b"", trailer[1])))
    return bytes(out) + b"startxref\n%d\n%%%%EOF\n" % start


def _places(pdf: bytes) -> dict[int, int]:
    """Where each object begins, from the table at the end."""
    table = pdf[int(pdf[pdf.rindex(b"startxref") + 9 :].split()[0]) :]
    lines = re.findall(rb"^(\d{10}) \d{5} ([nf])", table, re.MULTILINE)
    return {number: int(place) for number, (place, kind) in enumerate(lines) if kind == b"n"}


def _body(pdf: bytes, place: int) -> bytes:
    """What stands between the head of an object and its end. A stream may hold any bytes, so its length is read."""
    start = pdf.index(b"obj", place) + 3
    end = pdf.index(b"endobj", start)
    head = pdf.find(b"stream\n", start, end)
    if head >= 0 and (length := _LENGTH.search(pdf, start, head)):
        end = pdf.index(b"endobj", head + int(length[1]))
    return pdf[start:end].strip()


def _written(number: int, body: bytes) -> bytes:
    return b"%d 0 obj\n%s\nendobj\n" % (number, body)


def _together(objects: list[tuple[int, bytes]]) -> bytes:
    head, body = bytearray(), bytearray()
    for number, content in objects:
        head += b"%d %d " % (number, len(body))
        body += content + b"\n"
    entries = b"/Type/ObjStm/N %d/First %d" % (len(objects), len(head))
    return _stream(entries, bytes(head + body))


def _table(where: dict[int, tuple[int, int, int]], trailer: bytes) -> bytes:
    """Each row is written as its difference from the row above: most differ by one (PNG's filter "up")."""
    rows, above = bytearray(), bytes(7)
    for number in range(max(where) + 1):
        kind, place, index = where.get(number, (0, 0, 65535))
        row = kind.to_bytes(1) + place.to_bytes(4) + index.to_bytes(2)
        rows += b"\x02" + bytes((byte - before) % 256 for byte, before in zip(row, above, strict=True))
        above = row
    entries = b"/Type/XRef/W[1 4 2]/DecodeParms<</Predictor 12/Columns 7>>/Size %d%s"
    return _stream(entries % (max(where) + 1, trailer), bytes(rows))


def _stream(entries: bytes, content: bytes) -> bytes:
    packed = zlib.compress(content, 9)
    return b"<<%s/Filter/FlateDecode/Length %d>>\nstream\n%s\nendstream" % (entries, len(packed), packed)
