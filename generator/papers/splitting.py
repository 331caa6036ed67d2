"""Parts a pack into its papers: a paper that stands in a pack is not set a second time.

See ISO 32000-1, 7.7.3 (the tree of pages), 12.3.3 (the outline), 14.7 (tags) and 14.3.2 (metadata).
"""

from __future__ import annotations

import re
from xml.sax.saxutils import escape

from generator.papers.objects import Bodies, Document, named, number_at

_OUTLINES, _TREE = re.compile(rb"/Outlines (\d+) 0 R"), re.compile(rb"/StructTreeRoot (\d+) 0 R")
_PAGES, _ABOUT = re.compile(rb"/Pages (\d+) 0 R"), re.compile(rb"/Metadata (\d+) 0 R")
_FIRST, _NEXT = re.compile(rb"/First (\d+) 0 R"), re.compile(rb"/Next (\d+) 0 R")
_DEST, _TOP = re.compile(rb"/Dest (\d+) 0 R"), re.compile(rb"/K\[(\d+) 0 R\]")
_BESIDE = re.compile(rb"/(?:Next|Prev) \d+ 0 R")
_KIDS, _LIST = re.compile(rb"/Kids\[[^\]]*\]"), re.compile(rb"/K\[[^\]]*\]")
_ON = re.compile(rb"/Pg (\d+) 0 R")
_NUMBERS, _NUMBER = re.compile(rb"/Nums\[[^\]]*\]"), re.compile(rb"/StructParents (\d+)")
_ENTRY = re.compile(rb"(\d+) (\d+) 0 R")
_XMP_TITLE = re.compile(rb'(?<=<rdf:li xml:lang="x-default">).*?(?=</rdf:li>)', re.DOTALL)
_XMP_PAGES = re.compile(rb"(?<=<xmpTPg:NPages>)\d+")
_XMP_NAMES = re.compile(rb"<xmpMM:(InstanceID|DocumentID)>.*?</xmpMM:\1>")


class Pack:
    """A document of several papers, each of which begins with the only heading of its own in the outline."""

    def __init__(self, document: Document) -> None:
        self._document = document
        root = document.bodies[document.root]
        self._outlines, self._tree, self._pages, self._about = (
            number_at(mark, root) for mark in (_OUTLINES, _TREE, _PAGES, _ABOUT)
        )
        self._leaves = list(named(_found(_KIDS, document.bodies[self._pages])))
        self._items = list(self._chain())
        self.begins = [self._leaves.index(self._page_of_item(item)) for item in self._items]
        """The page, from nothing, on which each paper begins."""
        self._tags = number_at(_TOP, document.bodies[self._tree])
        self._tags_on = self._tags_by_page()

    def __len__(self) -> int:
        return len(self._items)

    def part(self, which: int, title: str) -> Document:
        """One of the papers as a document with a title of its own."""
        ends = [*self.begins[1:], len(self._leaves)]
        pages = self._leaves[self.begins[which] : ends[which]]
        while len(pages) > 1 and self._is_blank(pages[-1]):
            pages.pop()
        return self._document.changed(
            {**self._outline(which), **self._tagged(pages), **self._named(title, len(pages)), **self._bound(pages)}
        )

    def _chain(self) -> list[int]:
        bodies, items = self._document.bodies, [number_at(_FIRST, self._document.bodies[self._outlines])]
        while following := _NEXT.search(bodies[items[-1]]):
            items.append(int(following[1]))
        return items

    def _page_of_item(self, item: int) -> int:
        return next(iter(named(self._document.bodies[number_at(_DEST, self._document.bodies[item])])))

    def _is_blank(self, page: int) -> bool:
        """A page without tags was put in so that the next paper begins on the front of a leaf."""
        return b"/StructParents" not in self._document.bodies[page]

    def _tags_by_page(self) -> dict[int, list[int]]:
        """The highest tags by the page that they begin on, in their order."""
        found: dict[int, list[int]] = {}
        page = self._leaves[0]
        for tag in named(_found(_LIST, self._document.bodies[self._tags])):
            page = self._page_of(tag) or page
            found.setdefault(page, []).append(tag)
        return found

    def _page_of(self, tag: int) -> int | None:
        body = self._document.bodies[tag]
        if on := _ON.search(body):
            return int(on[1])
        return next((page for kid in named(_found(_LIST, body)) if (page := self._page_of(kid))), None)

    def _outline(self, which: int) -> Bodies:
        item = self._items[which]
        return {
            self._outlines: b"<</Type/Outlines/First %d 0 R/Last %d 0 R/Count 1>>" % (item, item),
            item: _BESIDE.sub(b"", self._document.bodies[item]),
        }

    def _bound(self, pages: list[int]) -> Bodies:
        kids = b" ".join(b"%d 0 R" % page for page in pages)
        return {self._pages: b"<</Type/Pages/Count %d/Kids[%s]>>" % (len(pages), kids)}

    def _tagged(self, pages: list[int]) -> Bodies:
        bodies = self._document.bodies
        tags = [tag for page in pages for tag in self._tags_on.get(page, [])]
        keys = {key[1] for page in pages if (key := _NUMBER.search(bodies[page]))}
        tree = bodies[self._tree]
        entries = (entry for entry in _ENTRY.finditer(_found(_NUMBERS, tree)) if entry[1] in keys)
        numbers = b" ".join(entry[0] for entry in entries)
        tree = _NUMBERS.sub(lambda _: b"/Nums[%s]" % numbers, tree)
        kids = b"/K[%s]" % b" ".join(b"%d 0 R" % tag for tag in tags)
        return {self._tree: tree, self._tags: _LIST.sub(lambda _: kids, bodies[self._tags])}

    def _named(self, title: str, pages: int) -> Bodies:
        bodies = self._document.bodies
        told = b"\xfe\xff" + title.encode("utf-16-be")
        info = bodies[self._document.info]
        end = info.index(b"/Author")
        about = _XMP_TITLE.sub(lambda _: escape(title).encode(), bodies[self._about], count=1)
        about = _XMP_NAMES.sub(b"", _XMP_PAGES.sub(b"%d" % pages, about))
        return {
            self._document.info: b"<</Title<%s>%s" % (told.hex().encode(), info[end:]),
            self._about: _measured(about),
        }


def _measured(stream: bytes) -> bytes:
    """A plain stream with the length that it has."""
    start, end = stream.index(b"stream\n") + 7, stream.rindex(b"\nendstream")
    return re.sub(rb"/Length \d+", b"/Length %d" % (end - start), stream[:start]) + stream[start:]


def _found(pattern: re.Pattern[bytes], body: bytes) -> bytes:
    found = pattern.search(body)
    return found[0] if found else b""
