"""Tells whether a build would give what is already there. Standard library only, so that the answer comes at once."""

from __future__ import annotations

import hashlib
import json
import os
import sys
from collections.abc import Iterable, Iterator
from contextlib import suppress
from pathlib import Path
from urllib.parse import urlsplit

from generator.pipeline.order import Order


def is_fresh(order: Order) -> bool:
    """Whether the site in place was built from these very inputs."""
    return (order.site / "index.html").is_file() and _mark(order).get("inputs") == fingerprint(order.inputs)


def path_on_host(order: Order) -> str:
    """The path below which the built site expects to stand; begins and ends with `/`."""
    return urlsplit(_mark(order).get("address", "/")).path


def keep_mark(order: Order, inputs: str, address: str) -> None:
    """Remembers what the site in place was built from, and for which address."""
    order.mark.write_text(json.dumps({"inputs": inputs, "address": address}), encoding="utf-8")


def drop_mark(order: Order) -> None:
    """A site that is about to change is not known any more."""
    order.mark.unlink(missing_ok=True)


def fingerprint(inputs: Iterable[Path]) -> str:
    """One hash over names and bytes of all files, and over the Python that would read them.

    A file that cannot be read counts by its name: whoever reads it for what it says tells more of it.
    """
    total = hashlib.sha256(sys.version.encode())
    for place, root in enumerate(inputs):
        for path in _files(root):
            name = path.relative_to(root).as_posix()
            try:
                content = hashlib.sha256(path.read_bytes()).hexdigest()
            except OSError:
                content = "unread"
            total.update(f"{place} {name} {content}\n".encode(errors="surrogateescape"))
    return total.hexdigest()


def stamp(inputs: Iterable[Path]) -> frozenset[tuple[Path, int, int]]:
    """Sizes and times of all files: cheap enough to ask for often."""
    found = []
    for path in (path for root in inputs for path in _files(root)):
        try:
            state = path.stat()
        except OSError:  # an editor is just replacing it
            continue
        found.append((path, state.st_size, state.st_mtime_ns))
    return frozenset(found)


def _mark(order: Order) -> dict[str, str]:
    try:
        mark = json.loads(order.mark.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return mark if isinstance(mark, dict) else {}


def _files(root: Path) -> Iterator[Path]:
    """Without a word about folders that cannot be read, or that go meanwhile."""
    below = (Path(place, name) for place, _, names in os.walk(root) for name in names)
    for path in (root, *sorted(below)):
        with suppress(PermissionError):
            if path.is_file() and "__pycache__" not in path.parts:
                yield path
