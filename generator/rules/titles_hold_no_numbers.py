"""A title is what people call a page; a number in it would change with the plan, and the name with it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection

_NUMBER = re.compile(r"\d|\{")
_PAGES = ("phases", "procedures", "paths", "pages", "papers", "skills")


def titles_hold_no_numbers(inspection: Inspection) -> Iterator[Finding]:
    """No title of a page, a paper or a skill holds a number, typed or by id."""
    for leaf in inspection.human:
        found = _NUMBER.search(leaf.text)
        if leaf.kind in _PAGES and leaf.path in (("title",), ("verb",)) and found:
            hint = "say the number in the text below, by its id"
            fault = f"the title “{leaf.text}” holds a number"
            yield Finding(leaf.kind, leaf.name, leaf.path, fault, hint, column=found.start() + 1)
