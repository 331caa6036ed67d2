"""Fills templates. What a template may call is bound here, once for every page."""

from __future__ import annotations

import json
import re
from functools import partial
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup, escape

from generator.model.source import Citation
from generator.rendering import addresses
from generator.rendering.edition import Edition
from generator.rendering.figures import Figures
from generator.rendering.pages import Page
from generator.rendering.sentences import Sentences
from generator.rendering.words import Words

FRAME = "frame_"
"""Words whose ids begin so stand in the frame round every page."""
_MARKDOWN = re.compile(r"([\\`*_{}\[\]()#+\-.!|~^<>])")


class Writer:
    """Turns pages into Markdown."""

    def __init__(self, edition: Edition) -> None:
        self.edition = edition
        self.words = Words(edition)
        self.figures = Figures(edition)
        self.sentences = Sentences(edition, self.figures)
        self._templates = Environment(
            loader=PackageLoader("generator.rendering"),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
        )
        self._templates.globals |= {
            "edition": edition,
            "library": edition.library,
            "day": edition.day,
            "settings": edition.settings,
            "farm": edition.library.this_farm,
            "word": self.words,
            "say": self.sentences.html,
            "plain": self.sentences.plain,
            "figures": self.figures,
            "mark": self.figures.mark,
            "at": addresses,
        }
        self._templates.filters |= {"heading": self._heading, "json": _json}

    def page(self, page: Page) -> str:
        """The page as Markdown, with what the frame needs to know of it in its head."""
        link = partial(addresses.between, page.address)
        template = self._templates.get_template(f"{page.template}.md.jinja")
        title = self.title(page)
        body = template.render(link=link, cite=partial(self._cite, link), title=title, **page.parts)
        head = {"title": title, **self._head(page), **page.head}
        lines = "".join(f"{key}: {json.dumps(value, ensure_ascii=False)}\n" for key, value in head.items())
        return f"---\n{lines}---\n\n{body}"

    def title(self, page: Page) -> str:
        """A page's title: a word of the interface, or a title from content."""
        return self.words(page.title_word) if page.title_word else self.edition.translate(page.title)

    def frame_words(self) -> dict[str, str]:
        """Words that the frame round every page uses."""
        known = self.edition.library.words
        return {name.removeprefix(FRAME): self.words(name) for name in known if name.startswith(FRAME)}

    def _head(self, page: Page) -> dict[str, Any]:
        steps = {"before": page.before, "after": page.after}
        return {key: {"address": there.address, "title": self.title(there)} for key, there in steps.items() if there}

    def _heading(self, english: str) -> Markup:
        return Markup(_MARKDOWN.sub(r"\\\1", self.edition.translate(english)).replace("&", "&amp;"))

    def _cite(self, link: partial[str], citation: Citation) -> Markup:
        """A source as a link to where it is described, or the plain words that stand in its place."""
        if citation.id is None:
            return escape(self.words(f"source_{(citation.plain or '').replace(' ', '_').replace(chr(39), '')}"))
        source = self.edition.library.sources[citation.id]
        named = Markup('<a href="{}">{}</a>').format(link(f"{addresses.SOURCES}#{citation.id}"), source.title)
        memory = Markup(" ({})").format(self.words("source_memory")) if citation.memory else ""
        return named + (Markup(", {}").format(citation.place) if citation.place else "") + memory


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
