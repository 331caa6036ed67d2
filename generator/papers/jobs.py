"""Makes files on all processors, and keeps what is done for the next time."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing import get_context, parent_process
from pathlib import Path

from generator.papers.miniature import DOTS_PER_INCH, shrink
from generator.papers.typesetting import engine, picture, typeset
from generator.papers.wording import Data
from generator.problems import Problem, ProblemsFound, stop_at

KEPT = 400
"""So many files of other plans and older content are remembered too."""
FEW = 4
"""So few are set sooner by one process than others start."""


@dataclass(frozen=True)
class Job:
    """One file to make: a paper or a pack as PDF, or the picture of a paper's front."""

    file: str
    papers: tuple[Data, ...]
    title: str
    author: str

    def key(self, engine: str) -> str:
        """The same key, the same bytes."""
        told = json.dumps([self.file.rpartition(".")[2], self.papers, self.title, self.author, engine], sort_keys=True)
        return hashlib.sha256(told.encode()).hexdigest()

    def run(self) -> bytes | tuple[Problem, ...]:
        """The file's bytes, or what is wrong with the texts."""
        try:
            if self.file.endswith(".pdf"):
                return typeset(list(self.papers), self.title, self.author)
            return shrink(picture(self.papers[0], self.title, self.author, DOTS_PER_INCH))
        except ProblemsFound as found:
            return found.problems


def run_jobs(jobs: Sequence[Job], memory: Path) -> dict[str, bytes]:
    """Makes what is not remembered, and remembers it. Others may use the same memory at the same time."""
    memory.mkdir(parents=True, exist_ok=True)
    setting = engine()
    keys = {job.file: job.key(setting) for job in jobs}
    files = {file: content for file, key in keys.items() if (content := _recall(memory / key)) is not None}
    todo = [job for job in jobs if job.file not in files]
    problems: list[Problem] = []
    for job, made in zip(todo, _results(todo), strict=True):
        if isinstance(made, bytes):
            _keep(memory / keys[job.file], made)
            files[job.file] = made
        else:
            problems.extend(made)
    stop_at(problems)
    _forget(memory, set(keys.values()))
    return {file: files[file] for file in keys}


def _recall(path: Path) -> bytes | None:
    try:
        return path.read_bytes()
    except FileNotFoundError:
        return None


def _forget(memory: Path, used: set[str]) -> None:
    """Takes out the oldest of what was not used this time, where much has gathered."""
    others = [entry for entry in os.scandir(memory) if entry.name not in used]
    if len(others) <= KEPT:
        return
    with suppress(FileNotFoundError):  # someone else is tidying up
        for entry in sorted(others, key=lambda entry: entry.stat().st_mtime_ns, reverse=True)[KEPT:]:
            Path(entry).unlink(missing_ok=True)


def _results(todo: list[Job]) -> list[bytes | tuple[Problem, ...]]:
    if len(todo) < FEW or parent_process():  # one of several processes leaves the other cores to them
        return [job.run() for job in todo]
    with ProcessPoolExecutor(os.cpu_count(), mp_context=get_context("spawn")) as pool:
        return list(pool.map(Job.run, todo, chunksize=4))


def _keep(path: Path, content: bytes) -> None:
    new = path.with_suffix(f".{os.getpid()}")
    new.write_bytes(content)
    new.replace(path)
