"""One layer of content, the shared one or a farm's: all its files as entries by kind and id."""

from __future__ import annotations

from pathlib import Path

from generator.problems import Place, Problem, ProblemsFound
from generator.reading.composer import compose
from generator.reading.files import KINDS, find_files, shown_path
from generator.reading.text import read_text
from generator.reading.tree import Layer, Node


def read_layer(root: Path, layer: Layer, problems: list[Problem]) -> dict[str, dict[str, Node]]:
    """Every kind with its entries in order of file and line. Adds what is wrong to `problems` and reads on."""
    kinds: dict[str, dict[str, Node]] = {kind: {} for kind in KINDS}
    for kind, path in find_files(root, problems):
        try:
            entries = _entries(path, layer)
        except ProblemsFound as found:
            problems.extend(found.problems)
            continue
        for name, node in entries.items():
            first = kinds[kind].setdefault(name, node)
            if first is not node:
                hint = f"the other stands at {first.key}; rename one or take it out"
                problems.append(Problem(node.key, f"`{name}` is the id of two entries in {kind}", hint))
    return kinds


def _entries(path: Path, layer: Layer) -> dict[str, Node]:
    file = shown_path(path)
    tree = compose(read_text(path), file, layer)
    if tree is None:
        raise ProblemsFound([Problem(Place(file), "the file holds no entry", "write one, or delete the file")])
    if not isinstance(tree.value, dict):
        fault = "the file is not a mapping of ids to entries"
        raise ProblemsFound([Problem(tree.place, fault, "write `id:` and its keys below it")])
    return tree.value
