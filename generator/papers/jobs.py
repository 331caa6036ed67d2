"""Makes files on all processors, and keeps what is done for the next time."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from multiprocessing import get_context
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
    """Makes what is not remembered, and remembers it."""
    memory.mkdir(parents=True, exist_ok=True)
    setting = engine()
    keys = {job.file: job.key(setting) for job in jobs}
    todo = [job for job in jobs if not (memory / keys[job.file]).is_file()]
    problems: list[Problem] = []
    for job, made in zip(todo, _results(todo), strict=True):
        if isinstance(made, bytes):
            _keep(memory / keys[job.file], made)
        else:
            problems.extend(made)
    stop_at(problems)
    _forget(memory, set(keys.values()))
    return {file: (memory / key).read_bytes() for file, key in keys.items()}


def _forget(memory: Path, used: set[str]) -> None:
    """Takes out the oldest of what was not used this time, where much has gathered."""
    others = [path for path in memory.iterdir() if path.name not in used]
    for path in sorted(others, key=lambda path: path.stat().st_mtime_ns, reverse=True)[KEPT:]:
        path.unlink(missing_ok=True)


def _results(todo: list[Job]) -> list[bytes | tuple[Problem, ...]]:
    if len(todo) < FEW:
        return [job.run() for job in todo]
    with ProcessPoolExecutor(os.cpu_count(), mp_context=get_context("spawn")) as pool:
        return list(pool.map(Job.run, todo, chunksize=4))


def _keep(path: Path, content: bytes) -> None:
    new = path.with_suffix(f".{os.getpid()}")
    new.write_bytes(content)
    new.replace(path)
