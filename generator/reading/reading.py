"""Content as read: the library, and where each part of it is written."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from generator.model.library import Library
from generator.problems import Place
from generator.reading.files import shown_path
from generator.reading.shape import Entries
from generator.reading.spot import find_spot
from generator.reading.tree import Node


@dataclass(frozen=True)
class Reading:
    """The library, and where each part of it is written."""

    library: Library
    entries: Entries
    shared: Path
    farm: Path
    removed: Mapping[str, Mapping[str, Node]] = field(default_factory=dict)
    """By kind and id, where the farm takes whole entries out."""

    def place(self, kind: str, name: str, *path: str | int) -> Place:
        """Where a value is written; where its nearest parent is, when it is not written itself.

        The path is that of the model: `place("procedures", "soak", "steps", "rinse", "key_points", 0)`.
        """
        node = self._node(kind, name, path)
        return node.place if node else Place(shown_path(self.shared / kind))

    def key_place(self, kind: str, name: str, *path: str | int) -> Place:
        """Where the key of a value is written."""
        node = self._node(kind, name, path)
        return node.key if node else self.place(kind, name)

    def spot(self, kind: str, name: str, *path: str | int, column: int) -> Place:
        """Where a character of a text is written; `column` counts from 1 in the text as read."""
        node = self._node(kind, name, path)
        return find_spot(node, column) if node else self.place(kind, name)

    def file(self, kind: str, filename: str) -> Path | None:
        """A file beside the entries, such as a drawing: the farm's own if there is one, else the shared one."""
        return next((path for layer in (self.farm, self.shared) if (path := layer / kind / filename).is_file()), None)

    def _node(self, kind: str, name: str, path: tuple[str | int, ...]) -> Node | None:
        entry = self.entries.get(kind, {}).get(name)
        return entry.nearest(path) if entry else None
