"""A glossary explains the words that a reader meets."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def terms_are_met(inspection: Inspection) -> Iterator[Finding]:
    """Every term stands in some text outside the list of terms."""
    texts = _words(" ".join(leaf.text for leaf in inspection.human if leaf.kind != "terms"))
    for name, term in inspection.library.terms.items():
        if _words(term.title) not in texts:
            fault = f"the term “{term.title}” stands in no text"
            yield Finding("terms", name, ("title",), fault, "use the word where it is meant, or take the term out")


def _words(text: str) -> str:
    """The words alone, a space before each: to look for a text is ten times as fast as for a pattern."""
    return "".join(f" {word}" for word in re.findall(r"\w+", text.casefold()))
