"""Tells whether a build would give what is already there. Standard library only, so that the answer comes at once."""

from __future__ import annotations

import hashlib
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path

from generator.pipeline.order import Order

MARK = "built-from"


def is_fresh(order: Order) -> bool:
    """Whether the site in place was built from these very inputs."""
    mark = order.into / MARK
    whole = (order.site / "index.html").is_file() and mark.is_file()
    return whole and mark.read_text() == fingerprint(order.inputs)


def fingerprint(inputs: Iterable[Path]) -> str:
    """One hash over names and bytes of all files, and over the Python that would read them."""
    total = hashlib.sha256(sys.version.encode())
    for place, root in enumerate(inputs):
        for path in _files(root):
            name = path.relative_to(root).as_posix()
            content = hashlib.sha256(path.read_bytes()).hexdigest()
            total.update(f"{place} {name} {content}\n".encode(errors="surrogateescape"))
    return total.hexdigest()


def _files(root: Path) -> Iterator[Path]:
    if root.is_file():
        yield root
    for path in sorted(root.rglob("*")):
        if path.is_file() and "__pycache__" not in path.parts:
            yield path
