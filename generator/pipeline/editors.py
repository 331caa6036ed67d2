"""The JSON Schemas that stand beside the content for editors, and whether they are up to date."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from generator.model.library import Library
from generator.reading.schemas import write_schemas

FOLDER = "content/schemas"
SETTINGS = ".vscode/settings.json"
LAYERS = {"shared": "content/shared", "farm": "content/farms/*"}


def stale_schemas(library: Library, root: Path) -> list[Path]:
    """Files below `root` that are missing, differ from what the model says now, or are of a kind that is gone."""
    with TemporaryDirectory() as folder:
        fresh = {path.relative_to(folder): path.read_bytes() for path in bring_schemas(library, Path(folder))}
    there = {path.relative_to(root) for path in (root / FOLDER).rglob("*.json")}
    same = {path for path, text in fresh.items() if (root / path).is_file() and (root / path).read_bytes() == text}
    return sorted((there | set(fresh)) - same)


def bring_schemas(library: Library, root: Path) -> list[Path]:
    """Writes them below `root`; returns the paths of all."""
    return write_schemas(library, root / FOLDER, root / SETTINGS, LAYERS)
