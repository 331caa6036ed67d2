"""The template of messages that translators work from."""

from __future__ import annotations

import io
import re

from babel.messages.catalog import Catalog
from babel.messages.pofile import write_po

from generator.formula import wording
from generator.model.leaves import Leaf, leaves
from generator.model.library import Library
from generator.model.roles import Human
from generator.units import showing

HEADER = 'msgid ""\nmsgstr "Content-Type: text/plain; charset=UTF-8\\n"\n\n'
"""Without dates and names, so that the same words give the same file."""


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
    return HEADER + file.getvalue().decode("utf-8")


def _field(leaf: Leaf) -> str:
    return f"{leaf.kind}/{leaf.name}: {'.'.join(str(part) for part in leaf.path)}"
