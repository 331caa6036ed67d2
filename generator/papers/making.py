"""Makes files on all processors, and keeps what is done for the next time."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager, suppress
from io import BytesIO
from multiprocessing import get_context, parent_process
from pathlib import Path
from zipfile import ZipFile

from generator.papers.jobs import AnyJob, Files, made
from generator.papers.typesetting import engine
from generator.problems import Problem, ProblemsFound, about_lost_process, stop_at
from generator.reading.remembering import recall, remember

KEPT = 100_000_000
"""So many bytes of other plans and older content are remembered too."""
FEW = 12
"""So many papers are set, or files bound, by one process before others have started."""


def run_jobs(jobs: Sequence[AnyJob], memory: Path) -> Files:
    """Makes what is not remembered, and remembers it. Raises ProblemsFound."""
    with jobs_begun(jobs, memory) as finish:
        return finish()


@contextmanager
def jobs_begun(jobs: Sequence[AnyJob], memory: Path) -> Iterator[Callable[[], Files]]:
    """The same, in other processes while this one goes on. Others may use the same memory at the same time."""
    memory.mkdir(parents=True, exist_ok=True)
    setting = engine()
    keys = [_key(job, setting) for job in jobs]
    recalled = [_recall(memory / key) for key in keys]
    with _begun([job for job, files in zip(jobs, recalled, strict=True) if files is None]) as results:
        yield lambda: _gathered(keys, recalled, iter(results()), memory)


def _gathered(
    keys: Sequence[str], recalled: Sequence[Files | None], others: Iterator[Files | tuple[Problem, ...]], memory: Path
) -> Files:
    problems: list[Problem] = []
    all_files: Files = {}
    for key, known in zip(keys, recalled, strict=True):
        files = known if known is not None else next(others)
        if isinstance(files, dict):
            all_files |= files
        else:
            problems.extend(files)
        if known is None and isinstance(files, dict):
            _keep(memory / key, files)
    stop_at(problems)
    _forget(memory, set(keys))
    return all_files


def _key(job: AnyJob, setting: str) -> str:
    """The same key, the same bytes."""
    return hashlib.sha256(json.dumps([setting, job.told()], sort_keys=True).encode()).hexdigest()


@contextmanager
def _begun(todo: list[AnyJob]) -> Iterator[Callable[[], list[Files | tuple[Problem, ...]]]]:
    if sum(job.amount for job in todo) <= FEW:
        yield lambda: [made(job) for job in todo]
        return
    one_of_several = parent_process() is not None  # the other cores are for the others
    with ProcessPoolExecutor(1 if one_of_several else os.cpu_count(), mp_context=get_context("spawn")) as pool:
        waiting = [pool.submit(made, job) for job in todo]
        yield lambda: _waited_for(waiting)


def _waited_for(waiting: Sequence[Future[Files | tuple[Problem, ...]]]) -> list[Files | tuple[Problem, ...]]:
    try:
        return [each.result() for each in waiting]
    except BrokenProcessPool as fault:
        raise ProblemsFound([about_lost_process("papers")]) from fault


def _recall(path: Path) -> Files | None:
    content = recall(path)
    if content is None:
        return None
    with ZipFile(BytesIO(content)) as kept:
        return {name: kept.read(name) for name in kept.namelist()}


def _keep(path: Path, files: Files) -> None:
    content = BytesIO()
    with ZipFile(content, "w") as kept:
        for name, each in files.items():
            kept.writestr(name, each)
    remember(path, content.getvalue())


def _forget(memory: Path, used: set[str]) -> None:
    """Takes out the oldest of what was not used this time, where much has gathered."""
    with suppress(FileNotFoundError):  # someone else is tidying up
        others = [(entry.stat(), Path(entry)) for entry in os.scandir(memory) if entry.name not in used]
        others.sort(key=lambda other: other[0].st_mtime_ns, reverse=True)
        together = 0
        for state, path in others:
            together += state.st_size
            if together > KEPT:
                path.unlink(missing_ok=True)
