"""What can be searched for: the titles of pages and of what stands in them, taken from the finished pages.

The worker takes them from the pages it keeps in the same way (`titlesIn`), so phones need not fetch them.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path

FILE = "search.json"
_TITLED = re.compile(
    r'<h1[^>]*>(?P<page>[^\n]*?)</h1>| id="(?P<part>[^"]+)"| data-find>(?P<title>[^\n]*?)</(?:h2|strong|summary|span)>'
)


def write_titles(site: Path) -> None:
    """Writes the titles of all pages of a site, in the order of their addresses."""
    pages = {page.parent.relative_to(site).as_posix(): page for page in site.rglob("index.html")}
    by_address = {"" if folder == "." else f"{folder}/": page for folder, page in pages.items()}
    found = [
        entry
        for address in sorted(by_address)
        for entry in titles_in(address, by_address[address].read_text(encoding="utf-8"))
    ]
    # As JavaScript writes it, to the byte: a phone's own list is checked by the hash of this one.
    titles = json.dumps(found, ensure_ascii=False, separators=(",", ":"))
    (site / FILE).write_text(titles, encoding="utf-8", newline="\n")


def titles_in(address: str, page: str) -> Iterator[tuple[str, str]]:
    """Where each title leads, and the title in HTML: that of the page first, then those marked to be found.

    What is marked belongs to the id before it, or to the page where there is none behind its title; a second one there
    has other words to find the same. The mark `data-find` is the last word in the tag of an h2, strong, summary or span
    that holds none of these and ends on its line.
    """
    to = address
    for found in _TITLED.finditer(page):
        if found["part"]:
            to = f"{address}#{found['part']}"
        elif found["page"] is not None:
            to = address
            yield to, found["page"]
        else:
            yield to, found["title"]
