"""What was read, as a tree in which every branch and leaf knows its place and its layer."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from generator.problems import Place

Layer = Literal["shared", "farm"]
Scalar = str | int | float | bool | None


class Node(NamedTuple):
    """A scalar, a list or a mapping; `place` is where a person would look for it, `key` where its key is written.

    A scalar's place is its first character, that of a list or mapping is its key. `style` is the YAML
    indicator of a scalar: empty when plain, else a quote, `|` or `>`.
    """

    value: Scalar | list[Node] | dict[str, Node]
    place: Place
    key: Place
    layer: Layer
    style: str = ""

    def child(self, part: str | int) -> Node | None:
        """The branch by key or position; None where there is none."""
        found: Node | None = None
        if isinstance(self.value, dict):
            found = self.value.get(str(part))
        elif isinstance(self.value, list) and isinstance(part, int) and 0 <= part < len(self.value):
            found = self.value[part]
        return found

    def along(self, path: tuple[str | int, ...]) -> Iterator[Node]:
        """This node and those met on the path; parts the writer left out (short forms) are stepped over."""
        node = self
        yield node
        for part in path:
            found = node.child(part)
            if found is not None:
                node = found
                yield node

    def nearest(self, path: tuple[str | int, ...]) -> Node:
        """The node at the path, or the last one on the way there."""
        return list(self.along(path))[-1]

    def plain(self) -> object:
        """The bare data: text, numbers, None, dicts, and tuples for lists."""
        if isinstance(self.value, dict):
            return {key: node.plain() for key, node in self.value.items()}
        if isinstance(self.value, list):
            return tuple(node.plain() for node in self.value)
        return self.value
