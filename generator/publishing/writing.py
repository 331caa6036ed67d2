"""Writes a whole folder of files, touching only what changed."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path


def write_folder(folder: Path, files: Mapping[str, str | bytes]) -> None:
    """Makes `folder` hold exactly these files, by path with `/`. A file that is right already is not touched."""
    folder.mkdir(parents=True, exist_ok=True)
    for path in sorted(folder.rglob("*"), reverse=True):
        if path.is_dir() and not path.is_symlink():
            _remove_if_empty(path)
        elif path.relative_to(folder).as_posix() not in files:
            path.unlink()
    for name, content in sorted(files.items()):
        path = folder / name
        data = content.encode() if isinstance(content, str) else content
        if not path.is_file() or path.read_bytes() != data:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)


def _remove_if_empty(folder: Path) -> None:
    if not any(folder.iterdir()):
        folder.rmdir()
