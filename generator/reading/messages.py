"""The template of messages that translators work from, and a language made by machine for tests."""

from __future__ import annotations

import io
import re

from babel.messages.catalog import Catalog
from babel.messages.pofile import write_po

from generator.formula import wording
from generator.model.leaves import Leaf, leaves
from generator.model.library import Library
from generator.model.roles import Human
from generator.reading.translation import Translation
from generator.units import showing

_BRACES = re.compile(r"(\{[^{}]*\})")
_ACCENTED = str.maketrans("aceinouyACEINOUY", "áçéíñóúýÁÇÉÍÑÓÚÝ")
_LONGER = 0.35
"""A usual allowance for languages that need more room than English."""


def extract(library: Library) -> Catalog:
    """Every text for people, once, in the order of the library; comments tell which fields say it.

    The words that shown values and workings bring themselves come first.
    """
    catalog = Catalog(fuzzy=False)
    for word in (*showing.WORDS, *wording.WORDS):
        catalog.add(word, auto_comments=["numbers"])
    for leaf in leaves(library, Human):
        if re.search(r"[^\W\d_]", leaf.text):
            catalog.add(leaf.text, auto_comments=[_field(leaf)])
    return catalog


def template(library: Library) -> str:
    """The text of `messages.pot`: the same for the same library, whenever it is made."""
    file = io.BytesIO()
    write_po(file, extract(library), omit_header=True, width=100)
    header = 'msgid ""\nmsgstr "Content-Type: text/plain; charset=UTF-8\\n"\n\n'
    return header + file.getvalue().decode("utf-8")


def mechanical() -> Translation:
    """A language that is English with accents and a third longer: shows text that is not translated or has no room."""
    return Translation("en-x-longer", {}, _lengthen)


def _lengthen(english: str) -> str:
    parts = _BRACES.split(english)
    accented = "".join(part if part.startswith("{") else part.translate(_ACCENTED) for part in parts)
    more = round(len(english) * _LONGER)
    return accented + (" ñéx" * (more // 4 + 1))[:more].rstrip()


def _field(leaf: Leaf) -> str:
    return f"{leaf.kind}/{leaf.name}: {'.'.join(str(part) for part in leaf.path)}"
