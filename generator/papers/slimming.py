"""Says the same with fewer letters: fonts of one byte, lines without detours, short numbers, a small tree of tags.

See ISO 32000-1, 7.3.3 (numbers) and 7.8.2 (what draws a page).
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Mapping
from functools import lru_cache

from generator.papers.faces import Face, simple_faces
from generator.papers.lettering import lettered
from generator.papers.objects import STRING, Document, is_stream, unpacked
from generator.papers.structure import unwrapped

_CONTENTS, _RESOURCES = re.compile(rb"/Contents (\d+) 0 R"), re.compile(rb"/Resources (\d+) 0 R")
_FONTS, _FONT = re.compile(rb"/Font<<(.*?)>>"), re.compile(rb"/(f\d+) (\d+) 0 R")
_FORM = re.compile(rb"/Subtype/Form|/Type/Pattern")
_PIECES = re.compile(STRING + rb"|-?\d+\.\d+", re.DOTALL)


def slim(document: Document) -> Document:
    """The same document: every place within a tenth of a point, tags that hold content all there and in order."""
    simple, faces = (document, dict[int, Face]()) if _letters_beside_pages(document) else simple_faces(document)
    pages = dict[int, bytes]()
    for body in document.bodies.values():
        if b"/Type/Page/" in body and (content := _CONTENTS.search(body)):
            pages[int(content[1])] = _page(document.bodies[int(content[1])], _faces(document, body, faces))
    return Document(unwrapped(simple.changed(pages).bodies), document.root, document.info)


def _letters_beside_pages(document: Document) -> bool:
    """Whether a drawing that pages only name has letters too: such letters keep their two bytes, so the fonts do."""
    forms = (body for body in document.bodies.values() if _FORM.search(body[:400]) and is_stream(body))
    return any(b" Tf" in unpacked(body) for body in forms)


def _faces(document: Document, page: bytes, faces: Mapping[int, Face]) -> dict[bytes, Face]:
    """The simple fonts of a page, by the names that it has for them."""
    resources = _RESOURCES.search(page)
    fonts = _FONTS.search(document.bodies[int(resources[1])]) if resources else None
    return {name: faces[int(font)] for name, font in _FONT.findall(fonts[1]) if int(font) in faces} if fonts else {}


def _page(stream: bytes, faces: Mapping[bytes, Face]) -> bytes:
    packed = zlib.compress(_PIECES.sub(_piece, lettered(unpacked(stream), faces)), 9)
    return b"<</Length %d/Filter/FlateDecode>>\nstream\n%s\nendstream" % (len(packed), packed)


def _piece(found: re.Match[bytes]) -> bytes:
    return found[0] if found[0].startswith(b"(") else _number(found[0])


@lru_cache(maxsize=100_000)
def _number(text: bytes) -> bytes:
    """A number of one place, of more where it is small and may be a scale or a colour."""
    number = float(text)
    short = (b"%.3f" if abs(number) < 10 else b"%.2f" if abs(number) < 100 else b"%.1f") % number
    short = short.rstrip(b"0").rstrip(b".")
    return b"0" if short in {b"", b"-0"} else short
