"""Named values (`--gap`) of style sheets: the theme names many that nothing reads, whole drawings among them."""

from __future__ import annotations

import re
from collections.abc import Iterable

import tinycss2

_NAME = r"--[A-Za-z_][\w-]*"
_NAMED = re.compile(rf"({_NAME})\s*:([^;{{}}]*)")
_READ = re.compile(rf"var\(\s*({_NAME})")
_MENTIONED = re.compile(_NAME)
_RULE = re.compile(rf"([^{{}}]*)\{{([^{{}}]*{_NAME}\s*:[^{{}}]*)\}}")


def without_unread(sheet: str, others: Iterable[str], pages: Iterable[str], programs: Iterable[str]) -> str:
    """The sheet, where values are no longer named that it, the others, pages and programs leave alone."""
    read = values_read([sheet, *others], pages, programs)
    return _RULE.sub(lambda rule: f"{rule[1]}{{{kept}}}" if (kept := _kept(rule[2], read)) else "", sheet)


def values_read(sheets: Iterable[str], pages: Iterable[str], programs: Iterable[str]) -> frozenset[str]:
    """Names that a rule or a drawing in a page reads, that a program mentions, or that such a value itself reads."""
    text = "\n".join(sheets)
    needs: dict[str, set[str]] = {}
    for name, value in _NAMED.findall(text):
        needs.setdefault(name, set()).update(_READ.findall(value))
    new = {name for page in pages for name in _READ.findall(page)} | set(_READ.findall(_NAMED.sub("", text)))
    new |= {name for program in programs for name in _MENTIONED.findall(program)}
    read: set[str] = set()
    while new:
        read |= new
        new = {need for name in new for need in needs.get(name, ())} - read
    return frozenset(read)


def _kept(block: str, read: frozenset[str]) -> str:
    inside = tinycss2.parse_blocks_contents(block, skip_comments=True, skip_whitespace=True)
    idle = [each for each in inside if each.type == "declaration" and each.name.startswith("--")]
    idle = [each for each in idle if each.name not in read]
    return ";".join(each.serialize().strip() for each in inside if each not in idle) if idle else block
