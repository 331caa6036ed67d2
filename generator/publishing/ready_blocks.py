"""Hands HTML through Markdown untouched: our pages are headings with finished HTML between them.

Python-Markdown would read every tag of it twice to find where it ends, which is the longest part of making a site.
"""

from __future__ import annotations

import re

from markdown import Markdown
from markdown.extensions import Extension
from markdown.preprocessors import Preprocessor

_HEADING = re.compile(r"^(#{1,6} .*)$", re.MULTILINE)
_BEFORE_HTML_IS_READ = 25
"""Between `normalize_whitespace` (30) and what MkDocs (21) and Python-Markdown (20) do with HTML."""


class ReadyBlocks(Extension):
    """Puts what begins with a tag aside, up to the next heading."""

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 - Python-Markdown calls it so
        """Registers itself."""
        md.preprocessors.register(_PutAside(md), "ready_blocks", _BEFORE_HTML_IS_READ)


class _PutAside(Preprocessor):
    def run(self, lines: list[str]) -> list[str]:
        blocks: list[str] = []
        for block in _parts("\n".join(lines)):
            html = block.lstrip("\n").startswith("<")
            blocks.append(self.md.htmlStash.store(block.strip("\n")) if html else block)
        return "\n\n".join(blocks).split("\n")


def _parts(text: str) -> list[str]:
    """Headings, and what stands between them. A line of a sentence that looks like a heading ends no element."""
    parts = [""]
    for piece in _HEADING.split(text):
        before = parts[-1].rstrip()
        if _HEADING.fullmatch(piece) and (not before or before.endswith(">")):
            parts += [piece, ""]
        else:
            parts[-1] += piece
    return [part for part in parts if part.strip()]


def makeExtension(**settings: object) -> ReadyBlocks:  # noqa: N802 - Python-Markdown asks for this name
    """The extension, as the settings of MkDocs name it by its module."""
    return ReadyBlocks(**settings)
