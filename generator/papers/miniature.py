"""Small pictures of papers in four greys: a tenth of their bytes, and the page of papers shows one of every paper."""

from __future__ import annotations

import struct
import zlib
from itertools import accumulate

DOTS_PER_INCH = 13.0
_SIGNATURE = b"\x89PNG\r\n\x1a\n"
_CHANNELS, _GREEN = 4, 1
"""Green alone tells how dark a colour is: nearly three fifths of what the eye takes for light is green."""


def shrink(png: bytes) -> bytes:
    """A PNG of eight bits and four channels, as Typst writes it, as a PNG of four greys."""
    width, height, data = _read(png)
    rows, above = list[bytes](), bytes(width)
    for start in range(0, len(data), width * _CHANNELS + 1):
        above = _plain(data[start], data[start + 1 + _GREEN : start + 1 + width * _CHANNELS : _CHANNELS], above)
        rows.append(b"\x00" + _greys(above))
    head = struct.pack(">IIBBBBB", width, height, 2, 0, 0, 0, 0)
    body = zlib.compress(b"".join(rows), 9)
    return _SIGNATURE + _chunk(b"IHDR", head) + _chunk(b"IDAT", body) + _chunk(b"IEND", b"")


def _read(png: bytes) -> tuple[int, int, bytes]:
    place, packed, width, height = len(_SIGNATURE), b"", 0, 0
    while place < len(png):
        length, kind = struct.unpack(">I4s", png[place : place + 8])
        content = png[place + 8 : place + 8 + length]
        if kind == b"IHDR":
            width, height, depth, colours = struct.unpack(">IIBB", content[:10])
            assert (depth, colours) == (8, 6)
        packed += content if kind == b"IDAT" else b""
        place += length + 12
    return width, height, zlib.decompress(packed)


def _plain(kind: int, row: bytes, above: bytes) -> bytes:
    """Takes the filter off a row of one channel, as the standard of PNG has it (its chapter 9)."""
    if kind == 0:
        return row
    if kind == 1:
        return bytes(value & 255 for value in accumulate(row))
    if kind == 2:
        return bytes((value + up) & 255 for value, up in zip(row, above, strict=True))
    plain, left, corner = bytearray(), 0, 0
    for value, up in zip(row, above, strict=True):
        left = (value + ((left + up) // 2 if kind == 3 else _paeth(left, up, corner))) & 255
        corner = up
        plain.append(left)
    return bytes(plain)


def _paeth(left: int, above: int, corner: int) -> int:
    beside, over, across = abs(above - corner), abs(left - corner), abs(left + above - 2 * corner)
    if beside <= over and beside <= across:
        return left
    return above if over <= across else corner


def _greys(row: bytes) -> bytes:
    """Four pixels to a byte."""
    greys = [(value + 42) // 85 for value in row] + [0] * (-len(row) % 4)
    return bytes(a << 6 | b << 4 | c << 2 | d for a, b, c, d in zip(*(greys[n::4] for n in range(4)), strict=True))


def _chunk(kind: bytes, content: bytes) -> bytes:
    return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))
