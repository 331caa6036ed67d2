"""Writes the lines of a page in fewer letters: each with its place alone, and letters of drawings joined into words.

See ISO 32000-1, 9.4 (text objects) and 9.3 (what stays set between them).
"""

from __future__ import annotations

import re
import struct
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.papers.faces import Face
from generator.papers.objects import STRING

_SHOWN = rb"\[(?:" + STRING + rb"|[-\d. ]+)*\]TJ|" + STRING + rb" ?Tj"
_RUN = re.compile(
    rb"q\s+([\d.]+) 0 0 (-[\d.]+) (-?[\d.]+) (-?[\d.]+) cm\s*((?:/c\d+ cs [\d. ]+scn)?)\s*"
    rb"BT\s*0 Tr\s*/(f\d+) ([\d.]+) Tf\s*1 0 0 -1 0 0 Tm\s*(" + _SHOWN + rb")\s*ET\s*Q\n",
    re.DOTALL,
)
_STATE = re.compile(rb"(?<![^\s\]C])[qQ](?=\s)")
_PIECE = re.compile(STRING + rb"|-?[\d.]+", re.DOTALL)
_ESCAPED = re.compile(rb"\\([0-7]{3}|.)", re.DOTALL)
_LETTERS = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
_TO_ESCAPE = re.compile(rb"[\\()\r]")
_LETTERING = re.compile(rb"/(?:ActualText|Alt) ?" + STRING + rb"|/(f\d+) [\d.]+ Tf|(" + STRING + rb")", re.DOTALL)
_NEAR = 0.05
"""Points: letters of drawings that stand so near to where the letter before them ends need no place of their own."""
Shown = list[bytes | float]
"""Glyphs of two bytes each, and between them what the pen goes back, in thousandths of the size."""


@dataclass
class _Line:
    left: float
    base: float
    size: float
    font: bytes
    colour: bytes
    shown: Shown

    def goes_on(self, other: _Line, face: Face) -> bool:
        """Takes in the other where it is on the same line in the same letters; only letters of drawings stand alone."""
        alike = (self.base, self.size, self.font) == (other.base, other.size, other.font)
        if not alike or self.colour != other.colour or len(other.shown) > 1 or other.left <= self.left:
            return False
        off = self.left + self._width(face) - other.left
        if abs(off) >= _NEAR:
            self.shown.append(off / self.size * 1000)
        self.shown += other.shown
        return True

    def _width(self, face: Face) -> float:
        moved = sum(
            -piece if isinstance(piece, float) else sum(face.widths.get(glyph, 0) for glyph in _glyphs(piece))
            for piece in self.shown
        )
        return moved * self.size / 1000


def lettered(page: bytes, faces: Mapping[bytes, Face]) -> bytes:
    """A page, unpacked, with the same letters at the same places. `faces` by the name that the page has for them."""
    out, set_, end = list[bytes](), (b"", b""), 0
    waiting: _Line | None = None
    for run in _RUN.finditer(page):
        if run[6] not in faces:
            continue
        line, between = _line(run), page[end : run.start()]
        end = run.end()
        if waiting and not between and waiting.goes_on(line, faces[line.font]):
            continue
        if waiting:
            out.append(_written(waiting, faces[waiting.font], set_))
            set_ = (waiting.colour, _letters(waiting))
        if _STATE.search(between):
            set_ = (b"", b"")
        out.append(_recoded(between, faces))
        waiting = line
    if waiting:
        out.append(_written(waiting, faces[waiting.font], set_))
    return b"".join((*out, _recoded(page[end:], faces)))


def _recoded(text: bytes, faces: Mapping[bytes, Face]) -> bytes:
    """Lines of another form, such as those with letters that are read as others, with bytes of the simple fonts."""
    face: Face | None = None

    def follow(found: re.Match[bytes]) -> bytes:
        nonlocal face
        if found[1]:
            face = faces.get(found[1])
        if found[2] and face:
            return b"".join(_joined([_unescaped(found[2])], face))
        return found[0]

    return _LETTERING.sub(follow, text)


def _line(run: re.Match[bytes]) -> _Line:
    scale = float(run[1])
    assert abs(float(run[2]) + scale) < 1e-4
    shown: Shown = [
        _unescaped(piece[0]) if piece[0].startswith(b"(") else float(piece[0]) for piece in _PIECE.finditer(run[8])
    ]
    return _Line(float(run[3]), float(run[4]), float(run[7]) * scale, run[6], run[5], shown)


def _letters(line: _Line) -> bytes:
    return b"/%b %g Tf " % (line.font, round(line.size, 2))


def _written(line: _Line, face: Face, before: tuple[bytes, bytes]) -> bytes:
    """What was set already is not set again."""
    colour = line.colour + b"\n" if line.colour != before[0] else b""
    font = _letters(line) if _letters(line) != before[1] else b" "
    shown = b"".join(_joined(line.shown, face))
    shown = b"[%b]TJ" % shown if len(line.shown) > 1 else shown + b"Tj"
    return colour + b"BT%b%g %g Td%b ET\n" % (font, round(line.left, 1), round(line.base, 1), shown)


def _joined(shown: Shown, face: Face) -> Iterator[bytes]:
    open_ = b""
    for piece in shown:
        if isinstance(piece, bytes):
            open_ += bytes(map(face.bytes_of.__getitem__, _glyphs(piece)))
        else:
            yield _escaped(open_) + b"%d" % round(piece)
            open_ = b""
    if open_:
        yield _escaped(open_)


def _glyphs(text: bytes) -> tuple[int, ...]:
    return struct.unpack(f">{len(text) // 2}H", text)


def _escaped(text: bytes) -> bytes:
    return b"(%b)" % _TO_ESCAPE.sub(lambda each: b"\\r" if each[0] == b"\r" else b"\\" + each[0], text)


def _unescaped(text: bytes) -> bytes:
    inside = text[1:-1]
    if b"\\(" in inside or b"\\)" in inside:
        return _ESCAPED.sub(_letter, inside)
    return inside.decode("unicode_escape").encode("latin-1")  # Python's strings escape all but brackets alike


def _letter(found: re.Match[bytes]) -> bytes:
    code = found[1]
    return bytes([int(code, 8)]) if len(code) == 3 else _LETTERS.get(code, code)
