"""Packs the small objects of a PDF into compressed streams: its tags make thousands of them.

See ISO 32000-1, 7.5.7 (object streams) and 7.5.8 (cross-reference streams).
"""

from __future__ import annotations

import hashlib
import zlib

from generator.papers.objects import Document, is_stream, renamed

_HEAD = b"%PDF-1.7\n%\x80\x80\x80\x80\n\n"
_TOGETHER = 2000
"""Objects to a stream: a reader unpacks a whole stream to get at one of them."""
_PLAIN, _PACKED = 1, 2


def pack(document: Document) -> bytes:
    """The document as a file. Objects are numbered anew, one after the other, which makes short names and tables."""
    reached = document.reached()
    streams = [number for number in reached if is_stream(document.bodies[number])]
    small = [number for number in reached if not is_stream(document.bodies[number])]
    numbers = {number: place for place, number in enumerate((*small, *streams), start=1)}
    bodies = {numbers[number]: renamed(document.bodies[number], numbers) for number in reached}
    out, where = bytearray(_HEAD), {0: (0, 0, 65535)}
    for number in range(len(small) + 1, len(reached) + 1):
        where[number] = (_PLAIN, len(out), 0)
        out += _written(number, bodies[number])
    following = len(reached) + 1
    for first in range(1, len(small) + 1, _TOGETHER):
        together = range(first, min(first + _TOGETHER, len(small) + 1))
        where[following] = (_PLAIN, len(out), 0)
        where |= {number: (_PACKED, following, index) for index, number in enumerate(together)}
        out += _written(following, _together([(number, bodies[number]) for number in together]))
        following += 1
    where[following] = (_PLAIN, len(out), 0)
    identity = hashlib.sha256(out).hexdigest()[:32].encode()
    ends = b"/Root %d 0 R/Info %d 0 R/ID[<%b><%b>]"
    table = _table(where, ends % (numbers[document.root], numbers[document.info], identity, identity))
    return bytes(out) + _written(following, table) + b"startxref\n%d\n%%%%EOF\n" % len(out)


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
        kind, place, index = where[number]
        row = kind.to_bytes(1) + place.to_bytes(4) + index.to_bytes(2)
        rows += b"\x02" + bytes((byte - before) % 256 for byte, before in zip(row, above, strict=True))
        above = row
    entries = b"/Type/XRef/W[1 4 2]/DecodeParms<</Predictor 12/Columns 7>>/Size %d%s"
    return _stream(entries % (max(where) + 1, trailer), bytes(rows))


def _stream(entries: bytes, content: bytes) -> bytes:
    packed = zlib.compress(content, 9)
    return b"<<%s/Filter/FlateDecode/Length %d>>\nstream\n%s\nendstream" % (entries, len(packed), packed)
