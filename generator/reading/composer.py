"""YAML text to a tree with places. Of YAML only what cannot surprise: no anchors, aliases, tags or second documents."""

from __future__ import annotations

import re
from collections.abc import Iterator

import yaml

from generator.problems import Place, Problem, ProblemsFound, as_shown
from generator.reading.scalars import resolve
from generator.reading.syntax import explain
from generator.reading.tree import Layer, Node

LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
DEEPEST = 30
"""Levels of nesting; content needs about ten, and a reader that recurses needs some limit."""


def compose(text: str, file: str, layer: Layer) -> Node | None:
    """The tree of a YAML text; None when it holds nothing. Raises ProblemsFound."""
    composer = _Composer(text, file, layer)
    try:
        tree = composer.document()
    except yaml.YAMLError as error:
        raise ProblemsFound([*composer.problems, explain(error, file)]) from None
    if composer.problems:
        raise ProblemsFound(composer.problems)
    return tree


class _Composer:
    """Walks the parser's events once, gathering problems as it goes."""

    def __init__(self, text: str, file: str, layer: Layer) -> None:
        self.events: Iterator[yaml.NodeEvent] = yaml.parse(text, Loader=LOADER)  # type: ignore[assignment]
        self.lines = text.splitlines()
        self.file = file
        self.layer: Layer = layer
        self.problems: list[Problem] = []

    def document(self) -> Node | None:
        tree: Node | None = None
        documents = 0
        for event in self.events:
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents == 2:
                    hint = "keep one document in a file; take out the line `---`"
                    self._report(event, "a second document begins here", hint)
            elif isinstance(event, yaml.NodeEvent):
                tree = self._node(event, None, 1)
        return None if tree is None or tree.value is None else tree

    def _node(self, event: yaml.NodeEvent, key: Place | None, depth: int) -> Node:
        if depth > DEEPEST:
            self._report(event, f"nested more than {DEEPEST} levels deep", "check the brackets and the indentation")
            raise ProblemsFound(self.problems)
        self._refuse_decoration(event)
        here = self._place(event)
        if isinstance(event, yaml.ScalarEvent):
            self._refuse_cut_text(event)
            value = event.value if event.style else resolve(event.value)
            return Node(value, here, key or here, self.layer, event.style or "")
        if isinstance(event, yaml.MappingStartEvent):
            return Node(self._mapping(depth), key or here, key or here, self.layer)
        if isinstance(event, yaml.SequenceStartEvent):
            return Node(self._sequence(depth), key or here, key or here, self.layer)
        return Node(None, here, key or here, self.layer)

    def _sequence(self, depth: int) -> list[Node]:
        nodes: list[Node] = []
        while not isinstance(event := next(self.events), yaml.SequenceEndEvent):
            nodes.append(self._node(event, None, depth + 1))
        return nodes

    def _mapping(self, depth: int) -> dict[str, Node]:
        nodes: dict[str, Node] = {}
        while not isinstance(event := next(self.events), yaml.MappingEndEvent):
            key = self._key(event, depth)
            node = self._node(next(self.events), self._place(event), depth + 1)
            if key is None:
                continue
            if key in nodes:
                first = nodes[key].key.line
                self._report(
                    event, f"key {as_shown(key)} is written twice", f"it stands on line {first} already; keep one"
                )
            else:
                nodes[key] = node
        return nodes

    def _key(self, event: yaml.NodeEvent, depth: int) -> str | None:
        if isinstance(event, yaml.ScalarEvent) and event.value:
            self._refuse_decoration(event)
            return str(event.value)
        if isinstance(event, yaml.ScalarEvent):
            self._report(event, "a key is missing before the colon", "write `key: value`")
        else:
            self._report(event, "a key must be plain text", "write `key: value`")
            self._node(event, None, depth + 1)
        return None

    def _refuse_cut_text(self, event: yaml.ScalarEvent) -> None:
        """As of `Gate #2, by the barn`, of which YAML takes `Gate`."""
        end = event.end_mark
        behind = self.lines[end.line][end.column :] if end and end.line < len(self.lines) else ""
        if event.value and re.match(r"[ \t]+#[^\s#]", behind):
            hint = "put the text in quotes; a remark has a blank behind its `#`"
            self._report(event, f"the text ends before {as_shown(behind.strip())}", hint)

    def _refuse_decoration(self, event: yaml.NodeEvent) -> None:
        if isinstance(event, yaml.AliasEvent):
            hint = "write the text out; a word that begins with `*` goes in quotes"
            self._report(event, f"alias {as_shown(f'*{event.anchor}')}", hint)
        elif event.anchor is not None:
            self._report(
                event,
                f"anchor {as_shown(f'&{event.anchor}')}",
                "take it out; a word that begins with `&` goes in quotes",
            )
        elif (tag := getattr(event, "tag", None)) is not None:
            self._report(event, f"tag {as_shown(tag)}", "take it out; a word that begins with `!` goes in quotes")

    def _place(self, event: yaml.Event) -> Place:
        mark = event.start_mark
        return Place(self.file, mark.line + 1, mark.column + 1) if mark else Place(self.file)

    def _report(self, event: yaml.Event, fault: str, hint: str) -> None:
        self.problems.append(Problem(self._place(event), fault, hint))
