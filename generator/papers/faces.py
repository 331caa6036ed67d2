"""Fonts of one byte a letter: a face of a paper has fewer glyphs than a byte has values, and half of a page is letters.

A font of two bytes a letter becomes a simple one whose table of letters is put into its file. See ISO 32000-1, 9.6.3
(fonts of one byte), 9.6.6.4 (how they find a glyph), 9.10.3 (what is copied), and OpenType, `cmap` format 0.
"""

from __future__ import annotations

import re
import struct
import zlib
from collections.abc import Mapping
from dataclasses import dataclass

from generator.papers.objects import Document, number_at, unpacked

_NAME, _DEFAULT = re.compile(rb"/BaseFont/([^/\s]+)"), re.compile(rb"/DW (\d+)")
_BELOW, _MEANINGS = re.compile(rb"/DescendantFonts\[(\d+) 0 R\]"), re.compile(rb"/ToUnicode (\d+) 0 R")
_ABOUT, _FILE = re.compile(rb"/FontDescriptor (\d+) 0 R"), re.compile(rb"/FontFile2 (\d+) 0 R")
_WIDTHS, _WIDTH = re.compile(rb"/W\[(.*)\]", re.DOTALL), re.compile(rb"(\d+) (\d+) (-?[\d.]+)")
_MEANING = re.compile(rb"<([0-9A-F]{4})> <([0-9A-F]+)>")
_UNSAFE = set(b"()\\")
_MOST = 220
"""A face with more glyphs than this keeps its two bytes."""
_CMAP = b"""/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<00> <FF>
endcodespacerange
%b
endcmap
CMapName currentdict /CMap defineresource pop
end
end"""


@dataclass(frozen=True)
class Face:
    """What a page needs to know of a font: the byte and the width, in thousandths of its size, of each glyph."""

    bytes_of: Mapping[int, int]
    widths: Mapping[int, float]


def simple_faces(document: Document) -> tuple[Document, dict[int, Face]]:
    """The document with simple fonts in the place of those that allow it, and what became of each of these."""
    faces, bodies = dict[int, Face](), dict[int, bytes]()
    for number, body in document.bodies.items():
        if b"/Subtype/Type0" in body[:60] and (made := _face(document, body)):
            faces[number] = made
            bodies |= _simple(document, number, made)
    return document.changed(bodies), faces


def _face(document: Document, font: bytes) -> Face | None:
    below = document.bodies[number_at(_BELOW, font)]
    meanings = _meanings(document, font)
    if b"/CIDFontType2" not in below or len(meanings) > _MOST:
        return None
    widths = {
        glyph: float(width)
        for first, last, width in _WIDTH.findall(_WIDTHS.search(below)[1])  # type: ignore[index]
        for glyph in range(int(first), int(last) + 1)
    }
    return Face(_bytes(meanings), widths)


def _meanings(document: Document, font: bytes) -> dict[int, bytes]:
    told = unpacked(document.bodies[number_at(_MEANINGS, font)])
    return {int(glyph, 16): meaning for glyph, meaning in _MEANING.findall(told)}


def _bytes(meanings: Mapping[int, bytes]) -> dict[int, int]:
    """Letters of ASCII as themselves, so that pages pack well; all else from 128 up, then wherever there is room."""
    found = dict[int, int]()
    for glyph, meaning in meanings.items():
        code = int(meaning, 16)
        if code < 127 and code >= 32 and code not in _UNSAFE and code not in found.values():
            found[glyph] = code
    free = iter(code for code in (*range(128, 256), *range(33, 127)) if code not in _UNSAFE | set(found.values()))
    return {glyph: found.get(glyph) or next(free) for glyph in meanings}


def _simple(document: Document, number: int, face: Face) -> dict[int, bytes]:
    font = document.bodies[number]
    below = document.bodies[number_at(_BELOW, font)]
    about = number_at(_ABOUT, below)
    words, file = number_at(_MEANINGS, font), number_at(_FILE, document.bodies[about])
    glyphs = {code: glyph for glyph, code in face.bytes_of.items()}
    widths = b" ".join(b"%g" % face.widths.get(glyphs.get(code, -1), 0) for code in range(32, 256))
    entries = b"/FirstChar 32/LastChar 255/Widths[%b]/FontDescriptor %d 0 R/ToUnicode %d 0 R" % (widths, about, words)
    meanings = _meanings(document, font)
    program = with_letters(unpacked(document.bodies[file]), glyphs)
    return {
        number: b"<</Type/Font/Subtype/TrueType/BaseFont/%b%b>>" % (_NAME.search(font)[1], entries),  # type: ignore[index]
        about: re.sub(rb"/CIDSet \d+ 0 R", b"", document.bodies[about]),
        words: _packed(b"/Type/CMap", _table_of_meanings(face, meanings)),
        file: _packed(b"/Length1 %d" % len(program), program),
    }


def _table_of_meanings(face: Face, meanings: Mapping[int, bytes]) -> bytes:
    lines = sorted(b"<%02X> <%b>" % (code, meanings[glyph]) for glyph, code in face.bytes_of.items())
    blocks = [lines[start : start + 100] for start in range(0, len(lines), 100)]
    return _CMAP % b"\n".join(b"%d beginbfchar\n%b\nendbfchar" % (len(block), b"\n".join(block)) for block in blocks)


def with_letters(program: bytes, glyphs: Mapping[int, int]) -> bytes:
    """A TrueType file whose only table of letters finds these glyphs by their byte."""
    count = struct.unpack(">H", program[4:6])[0]
    tables = dict[bytes, bytes]()
    for entry in range(count):
        tag, _, start, length = struct.unpack(">4sIII", program[12 + 16 * entry : 28 + 16 * entry])
        tables[tag] = program[start : start + length]
    found = bytes(glyphs.get(code, 0) for code in range(256))
    tables[b"cmap"] = struct.pack(">HHHHIHHH", 0, 1, 1, 0, 12, 0, 262, 0) + found
    tables[b"head"] = tables[b"head"][:8] + bytes(4) + tables[b"head"][12:]
    whole = _font_file(tables)
    place = whole.index(b"head") + 8
    start = struct.unpack(">I", whole[place : place + 4])[0] + 8
    return whole[:start] + struct.pack(">I", (0xB1B0AFBA - _sum(whole)) % 2**32) + whole[start + 4 :]


def _font_file(tables: Mapping[bytes, bytes]) -> bytes:
    count = len(tables)
    power = count.bit_length() - 1
    head = struct.pack(">IHHHH", 0x00010000, count, 16 * 2**power, power, 16 * (count - 2**power))
    place = len(head) + 16 * count
    directory, body = b"", b""
    for tag in sorted(tables):
        table = tables[tag]
        directory += struct.pack(">4sIII", tag, _sum(table), place + len(body), len(table))
        body += table + bytes(-len(table) % 4)
    return head + directory + body


def _sum(table: bytes) -> int:
    padded = table + bytes(-len(table) % 4)
    words: tuple[int, ...] = struct.unpack(f">{len(padded) // 4}I", padded)
    return sum(words) % 2**32


def _packed(entries: bytes, content: bytes) -> bytes:
    packed = zlib.compress(content, 9)
    return b"<<%b/Filter/FlateDecode/Length %d>>\nstream\n%b\nendstream" % (entries, len(packed), packed)
