"""Takes papers out of what was set together, and binds them: a paper is set once, and stands alone and in the pack.

See ISO 32000-1, 7.7.3 (pages), 12.3.3 (the outline), 14.3.2 (metadata) and 14.7 (tags).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from io import BytesIO

import pikepdf
from pikepdf import Array, Dictionary, Name, Object, ObjectStreamMode, OutlineItem, Page, Pdf

pikepdf.settings.set_flate_compression_level(9)
_OF_THE_WHOLE = (Name.Lang, Name.MarkInfo, Name.Metadata, Name.ViewerPreferences)
_NAMED = {"/ID", "/Headers"}
_MEDIA, _PAGED = "{http://ns.adobe.com/xap/1.0/mm/}", "{http://ns.adobe.com/xap/1.0/t/pg/}"
_OF_ONE_FILE = {f"{_MEDIA}InstanceID", f"{_MEDIA}DocumentID", f"{_PAGED}NPages"}


@dataclass(frozen=True)
class Paper:
    """Pages of a file, and their highest tags in the order in which they are read aloud."""

    file: Pdf
    title: str
    pages: list[Page] = field(default_factory=list)
    tags: list[Object] = field(default_factory=list)


def papers_in(pdf: bytes) -> list[Paper]:
    """The papers of a file: each begins on a page of its own, with the only heading that it has in the outline."""
    file = Pdf.open(BytesIO(pdf))
    with file.open_outline() as outline:
        begun = {
            place[0].objgen: Paper(file, item.title)
            for item in outline.root
            if isinstance(place := item.destination, Array)
        }
    paper, owners = next(iter(begun.values())), dict[tuple[int, int], Paper]()
    for page in file.pages:
        paper = owners[page.obj.objgen] = begun.get(page.obj.objgen, paper)
        if Name.StructParents in page:  # others only fill a leaf, or hold letters
            paper.pages.append(page)
    for tag in _tags_apart(file):
        paper = owners.get(next(_pages_of(tag), (0, 0)), paper)
        paper.tags.append(tag)
    return list(begun.values())


def bind(papers: Sequence[Paper], title: str) -> bytes:
    """One file of these papers, each on the front of a leaf. The same papers, the same bytes."""
    made, tags, by_page = Pdf.new(), list[Object](), list[int | Object]()
    with made.open_outline() as outline:
        for paper in papers:
            if len(made.pages) % 2:
                _, _, width, height = map(float, made.pages[-1].mediabox)
                made.add_blank_page(page_size=(width, height))
            outline.root.append(OutlineItem(paper.title, len(made.pages)))
            by_page += _pages_into(made, paper, len(by_page) // 2)
            tags += [made.copy_foreign(tag) for tag in paper.tags]
    _share_fonts(made)
    _describe(made, papers[0].file, title)
    _tag(made, papers[0].file, tags, by_page)
    written = BytesIO()
    made.save(written, min_version="1.7", object_stream_mode=ObjectStreamMode.generate, deterministic_id=True)
    return written.getvalue()


def count_pages(pdf: bytes) -> int:
    """How many pages a file has."""
    return len(Pdf.open(BytesIO(pdf)).pages)


def _tags_apart(file: Pdf) -> Iterator[Object]:
    """The highest tags, let go from the file.

    Cells stop to name their headings: names would clash with those of other files, and headings have a scope.
    """
    for tag in (each for each in file.objects if isinstance(each, Dictionary) and Name.A in each):
        for named in (tag, *tag.A):
            for key in _NAMED & set(named.keys()):
                del named[key]
    for top in file.Root.StructTreeRoot.K[0].K:
        del top[Name.P]
        yield top


def _pages_of(tag: Object) -> Iterator[tuple[int, int]]:
    """The pages of a tag and of those below it, in their order."""
    if Name.Pg in tag:
        yield tag.Pg.objgen
    for kid in tag.get(Name.K, ()):
        if isinstance(kid, Dictionary):
            yield from _pages_of(kid)


def _pages_into(made: Pdf, paper: Paper, number: int) -> Iterator[int | Object]:
    """Appends the pages; gives for each its number among all and the tags of what is marked on it."""
    marked = paper.file.Root.StructTreeRoot.ParentTree.Nums
    for place, page in enumerate(paper.pages, start=number):
        tags = marked[2 * int(page.obj.StructParents) + 1]
        made.pages.append(page)
        made.pages[-1].obj.StructParents = place
        yield from (place, made.copy_foreign(tags))


def _tag(made: Pdf, like: Pdf, tags: list[Object], by_page: list[int | Object]) -> None:
    """Hangs the tags into a tree."""
    tree = made.make_indirect(Dictionary(Type=Name.StructTreeRoot, ParentTree=Dictionary(Nums=Array(by_page))))
    tree.RoleMap = _copied(made, like, like.Root.StructTreeRoot.RoleMap)
    top = made.make_indirect(Dictionary(Type=Name.StructElem, S=Name.Document, P=tree, K=Array(tags)))
    for tag in tags:
        tag.P = top
    tree.K = Array([top])
    tree.ParentTreeNextKey = len(by_page) // 2
    made.Root.StructTreeRoot = tree


def _share_fonts(made: Pdf) -> None:
    """Papers that were set with the same letters have equal fonts; one of each is enough."""
    fonts: dict[tuple[object, ...], Object] = {}
    for page in made.pages:
        named = page.obj.Resources.get(Name.Font, Dictionary())
        for name, font in named.items():
            named[name] = fonts.setdefault(_looks_of(font), font)


def _looks_of(font: Object) -> tuple[object, ...]:
    (drawn,) = font.DescendantFonts
    files = (font.ToUnicode, drawn.FontDescriptor.FontFile2)
    return (str(font.BaseFont), drawn.W.unparse(), *(file.read_raw_bytes() for file in files))


def _describe(made: Pdf, like: Pdf, title: str) -> None:
    """Says of the whole what the other file says, but for its title, and names and length that the other has alone."""
    for key in _OF_THE_WHOLE:
        made.Root[key] = _copied(made, like, like.Root[key])
    with made.open_metadata(set_pikepdf_as_editor=False) as about:
        about["dc:title"] = title
        for name in _OF_ONE_FILE & set(about):
            del about[name]


def _copied(made: Pdf, like: Pdf, entry: Object) -> Object:
    """Only what has a number goes from file to file."""
    return made.copy_foreign(entry if entry.is_indirect else like.make_indirect(entry))
