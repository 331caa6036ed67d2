"""How many pages a finished PDF has."""

from __future__ import annotations

import re
import zlib

_TREE = re.compile(rb"/Type/Pages/Count (\d+)")
_STREAM = re.compile(rb"/Type/ObjStm[^>]*/Length (\d+)>>\nstream\n")


def count_pages(pdf: bytes) -> int:
    """Read from the root of the tree of pages, which lies in one of the packed streams."""
    for stream in _STREAM.finditer(pdf):
        content = zlib.decompress(pdf[stream.end() : stream.end() + int(stream[1])])
        if found := _TREE.search(content):
            return int(found[1])
    message = "a PDF without a tree of pages"
    raise ValueError(message)
