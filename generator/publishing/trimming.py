"""Takes out what no phone needs: four fifths of what the theme brings along, and what only readers of programs want."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

NOT_NEEDED = (
    "assets/javascripts",
    "assets/images",
    "sitemap.xml.gz",
)
"""The theme's program (ours does what is needed of it) with its search, its favicon, a second site map."""
OWN_PROGRAMS = "phone"
OWN_LOOKS = "look"
_MAP = re.compile(rb"\s*(?://|/\*)# sourceMappingURL=[^\s*]+(?:\s*\*/)?\s*$")
_COMMENT = re.compile(r"^[ \t]*(?:/\*\*(?:[^*]|\*(?!/))*\*/|//[^\n]*)[ \t]*\n", re.MULTILINE)
"""Comments that have their lines to themselves."""
_BEHIND = re.compile(r"(?<=[;{},)\]])[ \t]+// [^\"'`\n]*$", re.MULTILINE)
"""One behind code. With a quotation mark in it, it may be part of a text, and stays."""
_TYPE = re.compile(r"/\*\* @(?:type|param) (?:[^*\n]|\*(?!/))*\*/ ?")
"""What a name stands for, written beside it; no text of ours holds the like."""
_LOOK_COMMENT = re.compile(r"^[ \t]*/\*(?:[^*]|\*(?!/))*\*/[ \t]*\n", re.MULTILINE)
_COLOUR = re.compile(r"(?:(?<=[{}])|\A)\[data-md-color-(?:primary|accent)=(?!custom\])[a-z-]+\][^{}]*\{[^{}]*\}")
"""A rule of the theme for one of its own colours; the settings say `custom`."""
_LINES = re.compile(r"(?P<kept><(?P<name>pre|textarea)\b.*?</(?P=name)>)|\s*\n\s*", re.DOTALL)
"""The ends of lines with all the space about them, but for texts in which it is shown."""


def trim(site: Path) -> None:
    """Removes what no phone needs.

    Source maps, files that no page asks for, the theme's colours that the site does not wear, comments of our own
    programs and looks, and the empty lines and margins of all of them. No text in a program goes over lines.
    """
    for name in NOT_NEEDED:
        path = site / name
        if path.is_dir():
            shutil.rmtree(path)
        else:
            path.unlink(missing_ok=True)
    for path in site.rglob("*.map"):
        path.unlink()
    for path in (*site.rglob("*.js"), *site.rglob("*.css")):
        _change(path, _MAP.sub(b"", path.read_bytes()))
    for path in site.glob("assets/stylesheets/palette.*.css"):
        _change(path, without_colours(path.read_text(encoding="utf-8")).encode())
    for path in (*site.glob("*.js"), *(site / OWN_PROGRAMS).glob("*.js")):
        _change(path, without_margins(without_comments(path.read_text(encoding="utf-8"))).encode())
    for path in (site / OWN_LOOKS).glob("*.css"):
        _change(path, without_margins(_LOOK_COMMENT.sub("", path.read_text(encoding="utf-8"))).encode())
    for path in site.rglob("*.html"):
        _change(path, without_margins(path.read_text(encoding="utf-8")).encode())


def without_comments(program: str) -> str:
    """The program without types and comments, but for comments behind code in which there are quotation marks."""
    return _TYPE.sub("", _BEHIND.sub("", _COMMENT.sub("", program)))


def without_colours(look: str) -> str:
    """The theme's palette without the rules for colours of its own."""
    while (less := _COLOUR.sub("", look)) != look:
        look = less
    return look


def without_margins(page: str) -> str:
    """The page, look or program without empty lines, and with no space at the ends of the others."""
    return _LINES.sub(lambda found: found["kept"] or "\n", page)


def _change(path: Path, content: bytes) -> None:
    if content != path.read_bytes():
        path.write_bytes(content)
