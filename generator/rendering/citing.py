"""Sources as they are named beside what they support."""

from __future__ import annotations

from collections.abc import Callable

from markupsafe import Markup, escape

from generator.model.source import Citation
from generator.telling import addresses
from generator.telling.edition import Edition
from generator.telling.words import Words

_PLAIN = {
    "common practice": "source_common_practice",
    "farm's own figure": "source_own_figure",
    "from memory": "source_from_memory",
    "arithmetic": "source_arithmetic",
}


def cite(edition: Edition, words: Words, link: Callable[[str], str], citation: Citation) -> Markup:
    """A source as a link to where it is described, with the place in it; or the plain words that stand for one."""
    if citation.id is None:
        return escape(words(_PLAIN[citation.plain or "common practice"]))
    title = edition.library.sources[citation.id].title
    parts = [Markup('<a href="{}">{}</a>').format(link(f"{addresses.SOURCES}#{citation.id}"), title)]
    parts += [escape(f", {citation.place}")] if citation.place else []
    parts += [escape(f" ({words('source_memory')})")] if citation.memory else []
    return Markup("").join(parts)
