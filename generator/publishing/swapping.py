"""Replaces a folder only when its successor is whole."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


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
