"""Fills templates. What a template may call is bound here, once for every page."""

from __future__ import annotations

import json
from functools import partial
from pathlib import Path
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from generator.rendering.citing import cite
from generator.rendering.compiled import CompiledTemplates
from generator.rendering.pages import Page
from generator.rendering.views import Views
from generator.teaching.explaining import Explainer, Glossary
from generator.telling import addresses
from generator.telling.drawings import Drawings
from generator.telling.edition import Edition
from generator.telling.figures import Figures
from generator.telling.sentences import Sentences
from generator.telling.words import Words

_HABITS: dict[str, Any] = {"autoescape": True, "trim_blocks": True, "lstrip_blocks": True}


class Writer:
    """Turns pages into Markdown. `memory` is a folder that keeps templates as the Python that they become."""

    def __init__(self, edition: Edition, memory: Path | None = None) -> None:
        self.edition = edition
        self.words = Words(edition)
        self.figures = figures = Figures(edition)
        self._sentences = sentences = Sentences(edition, figures)
        self._glossary = Glossary(edition)
        self._templates = Environment(
            loader=PackageLoader("generator.rendering"),
            undefined=StrictUndefined,
            bytecode_cache=CompiledTemplates(memory, _HABITS),
            **_HABITS,
        )
        self._templates.filters |= Views(edition, figures, sentences).filters()
        self._templates.globals |= {
            "edition": edition,
            "library": edition.library,
            "day": edition.day,
            "settings": edition.settings,
            "farm": edition.library.this_farm,
            "word": self.words,
            "say": sentences.html,
            "plain": sentences.plain,
            "figures": figures,
            "mark": figures.mark,
            "drawing": Drawings(edition, figures).for_page,
            "at": addresses,
        }

    def page(self, page: Page) -> str:
        """The page as Markdown, with what the frame needs to know of it in its head."""
        link = partial(addresses.between, page.address)
        template = self._templates.get_template(f"{page.template}.md.jinja")
        title = self.title(page)
        sources = partial(cite, self.edition, self.words, link)
        words = Explainer(self._glossary, self._sentences, link)
        terms = {"explain": words.html, "unexplained": words.others}
        body = template.render(link=link, cite=sources, title=title, **terms, **page.parts)
        head = {"title": title, **self._steps(page), **page.head}
        lines = "".join(f"{key}: {json.dumps(value, ensure_ascii=False)}\n" for key, value in head.items())
        return f"---\n{lines}---\n\n{body}"

    def title(self, page: Page) -> str:
        """A page's title: a word of the interface, or a title from content."""
        return self.words(page.title_word) if page.title_word else self.edition.translate(page.title)

    def _steps(self, page: Page) -> dict[str, Any]:
        """The pages before and after, for the bar at the foot."""
        steps = {"before": page.before, "after": page.after}
        return {key: {"address": there.address, "title": self.title(there)} for key, there in steps.items() if there}
