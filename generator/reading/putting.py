"""Puts a file in the place of another."""

from __future__ import annotations

import shutil
from pathlib import Path


def put(path: Path, content: bytes) -> None:
    """The whole new file or the whole old one, whatever happens meanwhile; who may read it, and a link to it, stay."""
    path = path.resolve()
    path.parent.mkdir(parents=True, exist_ok=True)
    fresh = path.with_name(f".{path.name}.new")  # with a point before it what a cut leaves is not read as content
    try:
        fresh.write_bytes(content)
        if path.exists():
            shutil.copymode(path, fresh)
        fresh.replace(path)
    finally:
        fresh.unlink(missing_ok=True)
