"""Drawings of content, filled for a page or for a paper: words translated, numbers put in, colours chosen."""

from __future__ import annotations

import re
from collections.abc import Mapping
from html import unescape

from markupsafe import Markup, escape

from generator.problems import Place, Problem, ProblemsFound
from generator.telling.charts import draw_chart
from generator.telling.edition import Edition
from generator.telling.figures import Figures
from generator.telling.safe_svg import read_svg
from generator.telling.sentences import Sentences

PRINT: Mapping[str, str] = {
    "--picture-paper": "#ffffff",
    "--picture-fill": "#e4e4e4",
    "--picture-danger": "#a50f26",
    "--picture-water": "#2e7fc2",
    "--picture-flesh": "#d9a5a0",
    "--picture-ok": "#1f6f45",
    "--picture-earth": "#a88a63",
    "--picture-flame": "#e06c00",
}
"""Colours for print; on pages the style sheet says what each name means in light and in dark."""
INK = "#111111"
FONT = "Atkinson Hyperlegible"
_TEXT = re.compile(r"(<text[^>]*>)([^<]+)(</text>)")
_COLOUR = re.compile(r"var\((--picture-[a-z]+)\)")


class Drawings:
    """Fills the drawings of one edition."""

    def __init__(self, edition: Edition, figures: Figures) -> None:
        self._edition = edition
        self._say = Sentences(edition, figures)
        self._figures = figures

    def for_page(self, identifier: str) -> Markup:
        """The drawing as a part of a page, with title and description for those who cannot see it."""
        picture = self._edition.library.pictures[identifier]
        first, second = f"picture-{identifier}-title", f"picture-{identifier}-words"
        title, description = self._say.plain(picture.title), self._say.plain(picture.description)
        svg = self._filled(identifier)
        end = svg.index(">")
        names = f'<title id="{first}">{escape(title)}</title><desc id="{second}">{escape(description)}</desc>'
        marks = f'class="picture" role="img" aria-labelledby="{first}" aria-describedby="{second}"'
        return Markup(f"{svg[:end]} {marks}>{names}{svg[end + 1 :]}")

    def for_paper(self, identifier: str) -> dict[str, str]:
        """The drawing in the colours of print as `svg`, and in `words`."""
        picture = self._edition.library.pictures[identifier]
        svg = _COLOUR.sub(lambda name: PRINT[name[1]], self._filled(identifier))
        svg = svg.replace("currentColor", INK).replace("Atkinson Hyperlegible, system-ui, sans-serif", FONT)
        return {"svg": svg, "words": f"{self._say.plain(picture.title)}. {self._say.plain(picture.description)}"}

    def _filled(self, identifier: str) -> str:
        picture = self._edition.library.pictures[identifier]
        if picture.chart:
            return " ".join(draw_chart(picture.chart, self._edition, self._figures, self._say).split())
        file = self._edition.reading.file("pictures", f"{identifier}.svg")
        if file is None:
            raise ProblemsFound([Problem(Place(f"pictures/{identifier}.svg"), "there is no such drawing")])
        svg = " ".join(read_svg(file).split())
        if unknown := sorted(set(_COLOUR.findall(svg)) - set(PRINT)):
            hint = f"colours of drawings: {', '.join(PRINT)}"
            raise ProblemsFound([Problem(Place(f"pictures/{identifier}.svg"), f"no colour `{unknown[0]}`", hint)])
        return _TEXT.sub(lambda text: f"{text[1]}{escape(self._say.plain(unescape(text[2])))}{text[3]}", svg)
