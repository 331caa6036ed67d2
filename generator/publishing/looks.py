"""One style sheet for all pages: the theme's and ours in their order, without what no page can use.

A phone on a slow line waits for every sheet before it shows anything, and most of the theme's rules are for parts that
this site does not have. What only some pages wear stands in those pages.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import tinycss2
from tinycss2.ast import Node

from generator.problems import Place, Problem, ProblemsFound
from generator.publishing.values import without_unread
from generator.reading.remembering import recall, remember

HOME = "index.html"
OWN = "look"
SHEET = f"{OWN}/all.css"
PROGRAMS = "phone/*.js"
_LINK = re.compile(r'<link rel="stylesheet" href="(?P<address>[^"]+)">\n?')
_OWN_LINK = re.compile(rf'<link rel="stylesheet" href="(?P<address>[^"]*{OWN}/(?P<name>\w+\.css))">')
_TAG = re.compile(r"<[a-zA-Z][^>]*>")
_WORD = re.compile(r"[A-Za-z_][\w-]*")
_BEGINNING = re.compile(r"([A-Za-z_][\w-]*-)\$\{")
"""A name that a program puts together, as in `step--${state}`."""
_CONDITIONS = ("media", "supports", "layer", "container")


@dataclass(frozen=True)
class Vocabulary:
    """The names of elements, classes and ids that pages hold, and that programs may give them."""

    words: frozenset[str]
    beginnings: tuple[str, ...]

    def has(self, name: str) -> bool:
        """Whether anything on any page may be called so."""
        return name in self.words or name.startswith(self.beginnings)


def gather_looks(site: Path, memory: Path | None = None) -> None:
    """Puts one sheet in the place of those that every page asks for, and those of some pages into these.

    What became of each is kept in the folder for the `memory` of it, where one is given.
    Raises ProblemsFound for what is no style sheet.
    """
    pages = {page: page.read_text(encoding="utf-8") for page in sorted(site.rglob("*.html"))}
    programs = [file.read_text(encoding="utf-8") for file in sorted(site.glob(PROGRAMS))]
    links = _LINK.findall(pages[site / HOME])
    shared = [path for path in links if all(_leads_to(path, text) for text in pages.values())]
    vocabulary = read_vocabulary(pages.values(), programs)
    sheets = [_recalled((site / path).read_text(encoding="utf-8"), vocabulary, path, memory) for path in shared]
    (site / SHEET).parent.mkdir(exist_ok=True)
    others = [file.read_text(encoding="utf-8") for file in sorted(site.rglob("*.css")) if file.parent.name == OWN]
    gathered = without_unread("\n".join(sheets), others, pages.values(), programs)
    (site / SHEET).write_text(gathered, encoding="utf-8", newline="\n")
    for path in shared:
        (site / path).unlink()
    inside = _sheets_for_inside(site)
    for page, text in pages.items():
        worn = _with_own_sheets(_with_one_link(text, shared), inside)
        page.write_text(worn, encoding="utf-8", newline="\n")


def read_vocabulary(pages: Iterable[str], programs: Iterable[str]) -> Vocabulary:
    """What `pages` call their parts, and every word of `programs`."""
    written = list(programs)
    tags = {tag for page in pages for tag in _TAG.findall(page)}
    words = {word for text in (*tags, *written) for word in _WORD.findall(text)}
    return Vocabulary(frozenset(words), tuple({found for text in written for found in _BEGINNING.findall(text)}))


def _recalled(sheet: str, vocabulary: Vocabulary, path: str, memory: Path | None) -> str:
    """`only_used`, from memory where neither the sheet nor any of its words that pages have is new."""
    if memory is None:
        return only_used(sheet, vocabulary, path)
    had = sorted(word for word in set(_WORD.findall(sheet)) if vocabulary.has(word))
    file = (
        memory / hashlib.sha256(repr((tinycss2.VERSION, Path(__file__).read_bytes(), sheet, had)).encode()).hexdigest()
    )
    if (known := recall(file)) is not None:
        return known.decode()
    remember(file, (used := only_used(sheet, vocabulary, path)).encode())
    return used


def only_used(sheet: str, vocabulary: Vocabulary, path: str = SHEET) -> str:
    """The sheet without the selectors that ask for a name nothing has. Raises ProblemsFound for what is no rule."""
    rules = _parsed(sheet)
    faults = [
        Problem(Place(path, rule.source_line), f"this is no style rule: {rule.message}", "mend it")
        for rule in rules
        if rule.type == "error"
    ]
    if faults:
        raise ProblemsFound(faults)
    return "".join(_used(rule, vocabulary) for rule in rules)


@lru_cache
def _parsed(sheet: str) -> list[Node]:
    """The theme's sheets are read again for every farm that one process builds, and every time an author looks."""
    return list(tinycss2.parse_stylesheet(sheet, skip_comments=True, skip_whitespace=True))


def _used(rule: Node, vocabulary: Vocabulary) -> str:
    if rule.type == "qualified-rule":
        selectors = [each for each in _selectors(rule.prelude) if all(map(vocabulary.has, _names(each)))]
        prelude = ",".join(tinycss2.serialize(each).strip() for each in selectors)
        return f"{prelude}{{{tinycss2.serialize(rule.content).strip()}}}" if selectors else ""
    if rule.lower_at_keyword == "charset":
        return ""  # it holds at the beginning of a file only, and all files here are UTF-8
    if rule.content is None or rule.lower_at_keyword not in _CONDITIONS:
        return str(rule.serialize())
    inner = tinycss2.parse_rule_list(rule.content, skip_comments=True, skip_whitespace=True)
    used = "".join(_used(each, vocabulary) for each in inner)
    return f"@{rule.at_keyword}{tinycss2.serialize(rule.prelude)}{{{used}}}" if used else ""


def _selectors(prelude: list[Node]) -> list[list[Node]]:
    parts: list[list[Node]] = [[]]
    for token in prelude:
        if token == ",":
            parts.append([])
        else:
            parts[-1].append(token)
    return parts


def _names(selector: list[Node]) -> list[str]:
    """The elements, classes and ids a selector asks for. What stands in `:not()` and the like asks for nothing."""
    found: list[str] = []
    before = ""
    for token in selector:
        if token.type in ("ident", "hash") and before != ":":
            found.append(token.value)
        before = token.value if token.type == "literal" else ""
    return found


def _leads_to(path: str, page: str) -> bool:
    return any(f"/{address}".endswith(f"/{path}") for address in _LINK.findall(page))


def _sheets_for_inside(site: Path) -> dict[str, str]:
    """Each sheet of single pages as one line, as which the pack has it once. Those that name files stay outside.

    Programs ask for the file where a page that has no such sheet comes to need it.
    """
    inside = {}
    for file in sorted((site / OWN).glob("*.css")):
        sheet = file.read_text(encoding="utf-8")
        if file != site / SHEET and "url(" not in sheet:
            inside[file.name] = sheet.strip().replace("\n", " ")
            file.write_text(inside[file.name], encoding="utf-8", newline="\n")
    return inside


def _with_own_sheets(page: str, inside: Mapping[str, str]) -> str:
    """`data-sheet` tells programs which sheet it is."""

    def stands_inside(link: re.Match[str]) -> str:
        if link["name"] not in inside:
            return link[0]
        return f'<style data-sheet="{link["address"]}">\n{inside[link["name"]]}\n</style>'

    return _OWN_LINK.sub(stands_inside, page)


def _with_one_link(page: str, shared: list[str]) -> str:
    """The page with one link where the first was. Each page says in its own way where the site begins."""
    for number, path in enumerate(shared):
        link = next(each for each in _LINK.finditer(page) if f"/{each['address']}".endswith(f"/{path}"))
        place = link["address"].removesuffix(path)
        page = page.replace(link[0], "" if number else f'<link rel="stylesheet" href="{place}{SHEET}">\n', 1)
    return page
