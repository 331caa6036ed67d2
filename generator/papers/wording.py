"""Text as papers take it: runs of words and of numbers, translated, and never markup."""

from __future__ import annotations

import re

from generator.computing.items import Item
from generator.telling.edition import Edition
from generator.telling.figures import Figures
from generator.telling.sentences import Sentences
from generator.telling.words import Words
from generator.units.writing import NO_BREAK

Run = dict[str, str | bool]
_FIGURES = re.compile(r"[−-]?[\d.:–]+(?:\u00a0\d{3})*")


class Wording:
    """Says things for the papers of one edition."""

    def __init__(self, edition: Edition) -> None:
        self.edition = edition
        self.figures = Figures(edition)
        self.word = Words(edition)
        self._sentences = Sentences(edition, self.figures)

    def runs(self, english: str) -> list[Run]:
        """A sentence in runs, the numbers strong and kept on one line."""
        pieces = self._sentences.pieces(english) if english else ()
        return [{"text": _glue(text) if id_ else text, "strong": bool(id_)} for text, id_, _ in pieces]

    def text(self, english: str) -> str:
        """A sentence as plain text."""
        return self._sentences.plain(english) if english else ""

    def value(self, identifier: str, part: str = "first") -> str:
        """The value of a quantity as it is shown."""
        return _glue(self.figures.text(identifier, part))

    def large(self, identifier: str) -> list[Run]:
        """A value in runs, its figures strong; a value without figures is strong as a whole."""
        shown, runs, end = self.value(identifier), list[Run](), 0
        for figures in _FIGURES.finditer(shown):
            if figures.start() > end:
                runs.append({"text": shown[end : figures.start()], "strong": False})
            runs.append({"text": figures[0], "strong": True})
            end = figures.end()
        if not runs:
            return [{"text": shown, "strong": True}]
        return [*runs, {"text": shown[end:], "strong": False}] if end < len(shown) else runs

    def title_of(self, identifier: str) -> str:
        """The title of a quantity or choice."""
        return self.figures.title_of(identifier)

    def item(self, identifier: str) -> Item:
        """The quantity itself, with what it measures."""
        return self.figures.items[identifier]


def _glue(value: str) -> str:
    """Keeps `145 °F` and `6 h 00 min` together; a bracket may still begin a line."""
    return value.replace(" ", NO_BREAK).replace(f"{NO_BREAK}(", " (")
