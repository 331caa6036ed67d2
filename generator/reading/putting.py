"""Puts a file in the place of another."""

from __future__ import annotations

from pathlib import Path


def put(path: Path, content: bytes) -> None:
    """The whole new file or the whole old one, whatever happens meanwhile."""
    path.parent.mkdir(parents=True, exist_ok=True)
    fresh = path.with_name(f".{path.name}.new")  # with a point before it what a cut leaves is not read as content
    try:
        fresh.write_bytes(content)
        fresh.replace(path)
    finally:
        fresh.unlink(missing_ok=True)
