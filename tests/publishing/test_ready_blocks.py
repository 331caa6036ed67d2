"""Held against Python-Markdown itself: with the extension it has to give what it gives without."""

import re
from pathlib import Path

import pytest
from markdown import Markdown

from generator.publishing.ready_blocks import ReadyBlocks
from generator.rendering import render_site
from tests.rendering.conftest import make_edition

KNOWN = ["attr_list", "tables", "toc"]


def read(text: str) -> tuple[str, object]:
    """The HTML without the space between elements, and the table of contents."""
    plain = Markdown(extensions=KNOWN)
    return _close(plain.convert(text)), plain.toc_tokens  # type: ignore[attr-defined]


def read_ready(text: str) -> tuple[str, object]:
    ready = Markdown(extensions=[*KNOWN, ReadyBlocks()])
    return _close(ready.convert(text)), ready.toc_tokens  # type: ignore[attr-defined]


def _close(html: str) -> str:
    return re.sub(r"\s+(?=<)|(?<=>)\s+", "", html)


def test_pages_are_as_they_are_without_it(bakery_content: Path) -> None:
    files = render_site(make_edition(bakery_content)).files
    pages = [text.split("---\n", 2)[2] for name, text in files.items() if name.endswith(".md")]
    assert len(pages) > 20
    assert [read_ready(page) for page in pages] == [read(page) for page in pages]


@pytest.mark.parametrize(
    "text",
    [
        "# One {: #one }\n\n<p>a</p>\n\n## Two\n## Three\n\n<div>\n\n<b>b</b></div>",
        "<p>before any heading</p>\n\n# One",
        "<p>A line of a sentence\n\n# that looks like a heading.</p>\n\n## One {: #one }\n",
        "<p>A line\n# that looks like one.</p>",
        "# Prose\n\nWords of *Markdown*, and\n\n<p>HTML</p>\n",
        "# One\n\n<pre>\n\n  kept   as it is\n\n</pre>",
        "",
    ],
)
def test_so_is(text: str) -> None:
    assert read_ready(text) == read(text)
