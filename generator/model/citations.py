"""Every citation in content, wherever it stands in an entry."""

from __future__ import annotations

from collections.abc import Iterator

from generator.model.entry import Entry
from generator.model.leaves import Path
from generator.model.library import Library
from generator.model.source import Citation


def citations(library: Library) -> Iterator[tuple[str, str, Path, Citation]]:
    """The kind and id of the entry, the path in it, and the citation."""
    for kind in Library.model_fields:
        for name, entry in getattr(library, kind).items():
            for path, citation in _below(entry, ()):
                yield kind, name, path, citation


def _below(value: object, path: Path) -> Iterator[tuple[Path, Citation]]:
    if isinstance(value, Citation):
        yield path, value
    elif isinstance(value, Entry):
        for name in type(value).model_fields:
            yield from _below(getattr(value, name), (*path, name))
    elif isinstance(value, dict):
        for key, item in value.items():
            yield from _below(item, (*path, key))
    elif isinstance(value, tuple):
        for number, item in enumerate(value):
            yield from _below(item, (*path, number))
