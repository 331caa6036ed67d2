"""English texts of content in another language, by way of gettext catalogues."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from babel.messages.catalog import Message

from generator.problems import Place, Problem, ProblemsFound, stop_at
from generator.reading.catalogue import read_catalogue
from generator.reading.files import TRANSLATIONS, shown_path
from generator.reading.placeholders import placeholders

SOURCE_LANGUAGE = "en"


@dataclass(frozen=True)
class Translation:
    """The texts of one language. What has no translation stays English."""

    language: str
    texts: Mapping[str, str]
    otherwise: Callable[[str], str] = str

    @classmethod
    def of(cls, language: str, layers: Sequence[Path]) -> Translation:
        """The catalogues `translations/<language>.po` of the layers, a later one over an earlier.

        Raises ProblemsFound where there is none (but English needs none), where one cannot be read, and where a
        translation does not keep the names in braces.
        """
        files = [path for layer in layers if (path := layer / TRANSLATIONS / f"{language}.po").is_file()]
        if not files and language != SOURCE_LANGUAGE:
            place = Place(shown_path(layers[0] / TRANSLATIONS / f"{language}.po"))
            raise ProblemsFound(
                [Problem(place, "there is no such translation", "make it from the template of messages")]
            )
        texts: dict[str, str] = {}
        problems: list[Problem] = []
        for path in files:
            for message in _ready(path):
                english, translated = str(message.id), str(message.string)
                problems.extend(_lost_names(english, translated, Place(shown_path(path), message.lineno or 0)))
                texts[english] = translated
        stop_at(problems)
        return cls(language, texts)

    def text(self, english: str) -> str:
        """The text in this language, its names in braces kept."""
        return self.texts.get(english) or self.otherwise(english)


def _ready(path: Path) -> Iterator[Message]:
    """Messages that are translated and not marked fuzzy."""
    return (message for message in read_catalogue(path) if message.id and message.string and not message.fuzzy)


def _lost_names(english: str, translated: str, place: Place) -> Iterator[Problem]:
    wanted = sorted(found.written for found in placeholders(english))
    given = sorted(found.written for found in placeholders(translated))
    if wanted != given:
        asked = ", ".join(wanted) or "none"
        yield Problem(place, f"the names in braces are {', '.join(given) or 'none'}", f"the English text has {asked}")
