"""Finds the files of one layer of content, and reports whatever would otherwise be passed over in silence."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from generator.model.library import Library
from generator.problems import Place, Problem, as_shown, did_you_mean

KINDS = tuple(Library.model_fields)
TRANSLATIONS = "translations"
_FOLDERS = (*KINDS, TRANSLATIONS)
_BESIDE = {".md": _FOLDERS, ".svg": ("pictures",), ".po": (TRANSLATIONS,), ".pot": (TRANSLATIONS,)}
"""Files that are not entries, by ending, and the folders in which they may stand; notes may stand anywhere."""
_LITTER = ("thumbs.db", "desktop.ini")


def shown_path(path: Path) -> str:
    """The path as a person would type it: below the working folder when it lies there, and always printable."""
    absolute = path.absolute()
    here = Path.cwd()
    near = absolute.relative_to(here) if absolute.is_relative_to(here) else path
    return os.fsencode(near.as_posix()).decode("utf-8", "replace")


def find_files(root: Path, problems: list[Problem]) -> Iterator[tuple[str, Path]]:
    """Each entry file of a layer with its kind, in order of path. Adds what is out of place to `problems`."""
    if not root.is_dir():
        what = "is a file, not a folder" if root.exists() else "there is no such folder"
        problems.append(Problem(Place(shown_path(root)), what, "name the folder that holds the content"))
        return
    for path in _walk(root, problems):
        folder = path.relative_to(root).parts[0] if path.parent != root else ""
        problem = _out_of_place(path, folder)
        if problem:
            problems.append(problem)
        elif path.suffix == ".yml" and folder in KINDS:
            yield folder, path


def _walk(root: Path, problems: list[Problem]) -> Iterator[Path]:
    def unreadable(error: OSError) -> None:
        fault = f"the folder cannot be read: {error.strerror}"
        problems.append(Problem(Place(shown_path(Path(error.filename))), fault, "check its owner and permissions"))

    for place, below, names in os.walk(root, onerror=unreadable):
        folder = Path(place)
        below[:] = sorted(name for name in below if not name.startswith("."))
        if folder == root:
            problems.extend(_unknown_folder(root / name) for name in below if name not in _FOLDERS)
            below[:] = [name for name in below if name in _FOLDERS]
        problems.extend(_link(folder / name) for name in below if (folder / name).is_symlink())
        for name in sorted(names):
            if not name.startswith(".") and not name.endswith("~") and name.lower() not in _LITTER:
                yield folder / name


def _link(folder: Path) -> Problem:
    return Problem(
        Place(shown_path(folder)), "is a link to a folder, and links are not followed", "copy the folder here"
    )


def _unknown_folder(folder: Path) -> Problem:
    hint = did_you_mean(folder.name, _FOLDERS, "folders are named after a kind: " + ", ".join(_FOLDERS))
    return Problem(Place(shown_path(folder)), f"unknown kind of content {as_shown(folder.name)}", hint)


def _out_of_place(path: Path, folder: str) -> Problem | None:
    place = Place(shown_path(path))
    if path.suffix == ".yml":
        if folder in KINDS:
            return None
        return Problem(place, "stands outside the folder of a kind", "move it into one of: " + ", ".join(KINDS))
    if path.suffix == ".md" or folder in _BESIDE.get(path.suffix, ()):
        return None
    if ".yaml" in path.name.lower() or ".yml" in path.name.lower():
        rename = path.name.lower().partition(".y")[0] + ".yml"
        fault = "is not read: the name of an entry file ends in `.yml`"
        taken = (path.parent / rename).exists()
        return Problem(place, fault, "move it out of the content" if taken else f"rename it to {as_shown(rename)}")
    return Problem(
        place, "is not read: it is not an entry file", "move it out of the content, or end its name in `.yml`"
    )
