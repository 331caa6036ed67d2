"""Sentences of content with the day's numbers in their places."""

from __future__ import annotations

import re

from markupsafe import Markup, escape

from generator.telling.edition import Edition
from generator.telling.figures import Figures

_PLACE = re.compile(r"\{([a-z][a-z0-9_]*)( first)?\}")


class Sentences:
    """Turns text of content into HTML, translated, with every number marked for repainting."""

    def __init__(self, edition: Edition, figures: Figures) -> None:
        self._translate = edition.translate
        self._figures = figures

    def html(self, english: str) -> Markup:
        """The sentence as HTML; each `{id}` becomes the value in both systems of units."""
        parts, end = [], 0
        said = self._translate(english)
        for place in _PLACE.finditer(said):
            parts += [escape(said[end : place.start()]), self._figures.mark(place[1], "first" if place[2] else "both")]
            end = place.end()
        return Markup("").join([*parts, escape(said[end:])])

    def plain(self, english: str) -> str:
        """The sentence as plain text, for titles and summaries."""
        return str(self.html(english).striptags())
