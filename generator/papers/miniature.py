"""Small pictures of papers: four greys, because a phone keeps one of every paper."""

from __future__ import annotations

import struct
import zlib

DOTS_PER_INCH = 13.0
_SIGNATURE = b"\x89PNG\r\n\x1a\n"
_CHANNELS = 4


def shrink(png: bytes) -> bytes:
    """A PNG of eight bits and four channels, as Typst writes it, as a PNG of four greys."""
    width, height, data = _read(png)
    rows, above = list[bytes](), bytes(width * _CHANNELS)
    for number in range(height):
        start = number * (width * _CHANNELS + 1)
        above = _plain(data[start], bytearray(data[start + 1 : start + 1 + width * _CHANNELS]), above)
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


def _plain(kind: int, row: bytearray, above: bytes) -> bytes:
    """Takes the filter off a row, as the standard of PNG has it (its chapter 9)."""
    for place in range(len(row)):
        left = row[place - _CHANNELS] if place >= _CHANNELS else 0
        corner = above[place - _CHANNELS] if place >= _CHANNELS else 0
        guess = (0, left, above[place], (left + above[place]) // 2, _paeth(left, above[place], corner))[kind]
        row[place] = (row[place] + guess) & 255
    return bytes(row)


def _paeth(left: int, above: int, corner: int) -> int:
    guess = left + above - corner
    return min((left, above, corner), key=lambda one: abs(guess - one))


def _greys(row: bytes) -> bytes:
    """Four pixels to a byte; the weights of red, green and blue are those of ITU-R BT.601."""
    greys = [
        round((0.299 * row[at] + 0.587 * row[at + 1] + 0.114 * row[at + 2]) / 85)
        for at in range(0, len(row), _CHANNELS)
    ]
    greys += [0] * (-len(greys) % 4)
    return bytes(a << 6 | b << 4 | c << 2 | d for a, b, c, d in zip(*(greys[n::4] for n in range(4)), strict=True))


def _chunk(kind: bytes, content: bytes) -> bytes:
    return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))
