"""A farm's own figure must not stand under the name of somebody else's source."""

from __future__ import annotations

from collections.abc import Iterator

from generator.model.leaves import Path
from generator.reading.tree import Node
from generator.rules.inspection import Finding, Inspection

_FIGURES = ("default", "range", "value", "values", "formula")
_KINDS = ("quantities", "choices", "functions", "tables")


def farm_figures_are_owned(inspection: Inspection) -> Iterator[Finding]:
    """Where an overlay changes a figure, it gives the source of its own figure beside it."""
    for kind in _KINDS:
        for name, entry in inspection.reading.entries[kind].items():
            for path, field in _borrowed(entry, ()):
                fault = f"the farm's own `{field}` stands under the shared source"
                yield Finding(kind, name, (*path, field), fault, "add `source: farm's own figure` beside it")


def _borrowed(node: Node, path: Path) -> Iterator[tuple[Path, str]]:
    if not isinstance(node.value, dict):
        return
    source = node.value.get("source")
    for key, child in node.value.items():
        if key in _FIGURES and source and source.layer == "shared" and child.layer == "farm":
            yield path, key
        yield from _borrowed(child, (*path, key))
