"""One finding of the shape checker, and the words said about it."""

from __future__ import annotations

from dataclasses import dataclass

from pydantic_core import ErrorDetails

from generator.problems import as_shown
from generator.reading.tree import Node

EMPTY = "write its value, or take the key out"


@dataclass(frozen=True)
class Said:
    """A fault and its remedy."""

    fault: str
    hint: str = ""


@dataclass(frozen=True)
class Complaint:
    """One finding with the path as written, and the node it was found at (the one above, for a missing key)."""

    detail: ErrorDetails
    kind: str
    name: str
    path: tuple[str | int, ...]
    node: Node

    @property
    def field(self) -> str:
        """The last key on the path, or the entry's id."""
        return next((part for part in reversed(self.path) if isinstance(part, str)), self.name)

    @property
    def subject(self) -> str:
        """How the sentence begins: the field, and which item of its list."""
        last = self.path[-1] if self.path else ""
        return f"`{self.field}`, item {last + 1}," if isinstance(last, int) else f"`{self.field}`"

    @property
    def owner(self) -> str:
        """What the field belongs to."""
        above = [part for part in self.path[:-1] if isinstance(part, str)]
        return above[-1] if above else self.name

    def context(self, key: str) -> object:
        """A detail of the finding, such as a limit."""
        return self.detail.get("ctx", {}).get(key)


def what_it_is(value: object) -> str:
    """What stands where something else was wanted."""
    match value:
        case bool():
            return str(value).lower()
        case int() | float():
            return f"the number {value:g}" if isinstance(value, float) else f"the number {value}"
        case str():
            return f"the text {as_shown(value)}"
        case tuple() | list():
            return "a list"
        case dict():
            return "a mapping"
        case _:
            return "nothing"
