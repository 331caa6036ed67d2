"""Words of the glossary as they are met in sentences: each is explained where it comes first."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from functools import cached_property

from markupsafe import Markup, escape

from generator.telling import addresses
from generator.telling.edition import Edition
from generator.telling.sentences import Sentences


class Glossary:
    """Finds the words of one edition in its language, long ones before the short ones in them."""

    def __init__(self, edition: Edition) -> None:
        self._translate = edition.translate
        self._terms = edition.library.terms

    def find(self, text: str) -> Iterator[tuple[int, int, str]]:
        """Where words stand that the glossary explains, from and to, with the id of each."""
        if self._forms:
            for found in self._pattern.finditer(text):
                term = self._forms.get(found[0].casefold(), "")
                if term:
                    yield found.start(), found.end(), term

    @cached_property
    def _forms(self) -> dict[str, str]:
        """The id by each form of a word; empty for phrases in which it means something else."""
        translate, forms = self._translate, dict[str, str]()
        for name, term in self._terms.items():
            forms |= {translate(form).casefold(): name for form in (term.title, *term.also)}
        for term in self._terms.values():
            forms |= {translate(phrase).casefold(): "" for phrase in term.never}
        return forms

    @cached_property
    def _pattern(self) -> re.Pattern[str]:
        longest_first = sorted(self._forms, key=lambda form: (-len(form), form))
        return re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, longest_first))})(?![\w-])", re.IGNORECASE)


class Explainer:
    """Writes the sentences of one page with its first mention of each word linked to the glossary."""

    def __init__(self, glossary: Glossary, say: Sentences, link: Callable[[str], str]) -> None:
        self._glossary = glossary
        self._say = say
        self._link = link
        self._met: set[str] = set()

    def html(self, english: str) -> Markup:
        """The sentence as HTML; every number marked, every new word linked."""
        parts = []
        for text, number, part in self._say.pieces(english):
            parts.append(self._say.mark(number, part) if number else self._linked(text))
        return Markup("").join(parts)

    def others(self, sentences: Iterable[str]) -> list[str]:
        """Ids of words in these sentences that no link of the page explains."""
        found = [term for text in sentences for _, _, term in self._glossary.find(self._say.plain(text))]
        return [term for term in dict.fromkeys(found) if term not in self._met]

    def _linked(self, text: str) -> Markup:
        end, parts = 0, []
        for start, stop, term in self._glossary.find(text):
            if term not in self._met:
                self._met.add(term)
                address = self._link(f"{addresses.GLOSSARY}#{term}")
                parts += [escape(text[end:start]), _LINK.format(address, text[start:stop])]
                end = stop
        return Markup("").join([*parts, escape(text[end:])])


_LINK = Markup('<a class="term" href="{}">{}</a>')
