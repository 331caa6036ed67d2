"""Sentences of content with the day's numbers in their places."""

from __future__ import annotations

import re
from collections.abc import Iterator

from markupsafe import Markup, escape

from generator.telling.edition import Edition
from generator.telling.figures import Figures
from generator.units.writing import NO_BREAK

_PLACE = re.compile(r"\{([a-z][a-z0-9_]*)( first)?\}")
_BEFORE_SIGN = re.compile(r"(?<=\d) (?=[°%])")
"""Where a screen must not begin a line with a degree or a percent sign."""


class Sentences:
    """Turns text of content into sentences in the edition's language, with the day's numbers."""

    def __init__(self, edition: Edition, figures: Figures) -> None:
        self._translate = edition.translate
        self._figures = figures

    def pieces(self, english: str) -> Iterator[tuple[str, str, str]]:
        """The sentence in pieces of (text, id, part): words have no id, and a number stands as it is shown."""
        end, said = 0, self._translate(english)
        for place in _PLACE.finditer(said):
            if place.start() > end:
                yield said[end : place.start()], "", ""
            part = "first" if place[2] else "both"
            yield self._figures.text(place[1], part), place[1], part
            end = place.end()
        if end < len(said):
            yield said[end:], "", ""

    def mark(self, identifier: str, part: str) -> Markup:
        """A number of a sentence as an element that the phone repaints."""
        return self._figures.mark(identifier, part)

    def html(self, english: str) -> Markup:
        """The sentence as HTML, every number marked for repainting."""
        return Markup("").join(
            self._figures.mark(id_, part) if id_ else escape(_BEFORE_SIGN.sub(NO_BREAK, text))
            for text, id_, part in self.pieces(english)
        )

    def plain(self, english: str) -> str:
        """The sentence as plain text, for titles and summaries."""
        return "".join(text for text, _, _ in self.pieces(english))
