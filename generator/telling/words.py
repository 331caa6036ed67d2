"""Words of the interface: content like any other, looked up by id."""

from __future__ import annotations

from generator.problems import Place, Problem, ProblemsFound
from generator.telling.edition import Edition

PHONE = "phone_"
"""Words whose ids begin so are sent to the phone's programs."""
FRAME = "frame_"
"""Words whose ids begin so stand in the frame round every page; all others stand in pages."""


class Words:
    """Looks words up, and remembers what it did not find so that all of it is reported at once."""

    def __init__(self, edition: Edition) -> None:
        self._edition = edition
        self._missing: set[str] = set()

    def __call__(self, identifier: str, **parts: object) -> str:
        """The word in the edition's language; `{name}` in it is replaced by the part of that name."""
        word = self._edition.library.words.get(identifier)
        if word is None:
            self._missing.add(identifier)
            return ""
        said = self._edition.translate(word.says)
        for name, part in parts.items():
            said = said.replace("{" + name + "}", str(part))
        return said

    def beginning(self, mark: str) -> dict[str, str]:
        """All words whose ids begin with a mark, by id without it."""
        known = self._edition.library.words
        return {name.removeprefix(mark): self(name) for name in known if name.startswith(mark)}

    def stop_at_missing(self) -> None:
        """Raises ProblemsFound where pages asked for words that content does not have."""
        place = Place(f"{self._edition.reading.shared.name}/words")
        hint = "add it to a file there: `{}: {{says: ...}}`"
        found = [Problem(place, f"the word `{name}` is missing", hint.format(name)) for name in self._missing]
        if found:
            raise ProblemsFound(found)
