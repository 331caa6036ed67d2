"""Replaces a folder only when it is ours and its successor is whole."""

from __future__ import annotations

import shutil
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path

from generator.problems import Place, Problem, stop_at
from generator.publishing.trimming import OWN_PROGRAMS
from generator.reading.files import shown_path


def refuse_to_delete(folders: Iterable[Path]) -> None:
    """Raises ProblemsFound for each folder with something in it that no build made: those have our programs inside."""
    hint = "name another folder with `--into`, or move away what is in this one"
    stop_at(
        [
            Problem(Place(shown_path(folder)), "holds what no build made, and a build would delete it", hint)
            for folder in folders
            if folder.is_dir() and any(folder.iterdir()) and not (folder / OWN_PROGRAMS).is_dir()
        ]
    )


@contextmanager
def successor(folder: Path) -> Iterator[Path]:
    """Gives an empty folder beside `folder` to fill; takes its place after the block, or goes away after a fault."""
    new, old = (folder.with_name(f"{folder.name}.{state}") for state in ("new", "old"))
    if old.exists() and not folder.exists():
        old.rename(folder)  # the last swap was cut off between its two renames
    for leftover in (new, old):
        shutil.rmtree(leftover, ignore_errors=True)
    new.mkdir(parents=True)
    try:
        yield new
        if folder.exists():
            folder.rename(old)
        new.rename(folder)
    except BaseException:
        if old.exists() and not folder.exists():
            old.rename(folder)
        raise
    finally:
        for leftover in (new, old):
            shutil.rmtree(leftover, ignore_errors=True)
