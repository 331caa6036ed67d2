"""Makes files on all processors, and keeps what is done for the next time."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from multiprocessing import get_context, parent_process
from pathlib import Path
from zipfile import BadZipFile, ZipFile

from generator.papers.binding import bind, papers_in
from generator.papers.data import Data
from generator.papers.miniature import DOTS_PER_INCH, shrink
from generator.papers.typesetting import engine, forget, typeset, typeset_quire
from generator.problems import Problem, ProblemsFound, stop_at

KEPT = 100_000_000
"""So many bytes of other plans and older content are remembered too."""
FEW = 12
"""So many papers are set by one process before others have started."""
Files = dict[str, bytes]


@dataclass(frozen=True)
class Job:
    """A paper to make as PDF."""

    file: str
    paper: Data
    title: str
    author: str

    @property
    def amount(self) -> int:
        """How many papers are set for it."""
        return 1

    def told(self) -> list[object]:
        """All that the bytes depend on beside the engine."""
        return [self.file, self.paper, self.title, self.author]

    def run(self) -> Files:
        """The file. Raises ProblemsFound."""
        return {self.file: typeset([self.paper], self.title, self.author)}


@dataclass(frozen=True)
class QuireJob:
    """Papers set together, each of them as a file of its own, and pictures of those whose picture has a name."""

    file: str
    papers: tuple[Data, ...]
    parts: tuple[str, ...]
    pictures: tuple[str, ...]
    letters: str
    """Fonts have these, whichever of them the papers use."""
    title: str
    author: str

    @property
    def amount(self) -> int:
        """How many papers are set for it."""
        return len(self.papers)

    def told(self) -> list[object]:
        """All that the bytes depend on beside the engine."""
        return [self.file, self.papers, self.parts, self.pictures, self.letters, self.title, self.author]

    def run(self) -> Files:
        """The papers together and alone. Raises ProblemsFound with the faults of all."""
        pictured = [bool(name) for name in self.pictures]
        try:
            papers = list(self.papers)
            made = typeset_quire(papers, self.title, self.author, self.letters, pictured, DOTS_PER_INCH)
        except ProblemsFound:
            self._find_all()
            raise
        finally:
            forget()
        pictures = dict(zip(filter(None, self.pictures), map(shrink, made.fronts), strict=True))
        return {self.file: made.bound} | dict(zip(self.parts, made.parts, strict=True)) | pictures

    def _find_all(self) -> None:
        """Sets each paper alone, since the engine stops at the first that does not fit."""
        alone = (_made(Job("", paper, self.title, self.author)) for paper in self.papers)
        stop_at([problem for made in alone if isinstance(made, tuple) for problem in made])


@dataclass(frozen=True)
class PackJob:
    """A pack to bind from files of papers."""

    file: str
    quires: tuple[bytes, ...]
    title: str

    @property
    def amount(self) -> int:
        """Files bound, which take a while each."""
        return FEW

    def told(self) -> list[object]:
        """All that the bytes depend on beside the engine."""
        return [self.file, self.title, *(hashlib.sha256(quire).hexdigest() for quire in self.quires)]

    def run(self) -> Files:
        """The pack."""
        return {self.file: bind([paper for quire in self.quires for paper in papers_in(quire)], self.title)}


AnyJob = Job | QuireJob | PackJob


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
    keys: Sequence[str], recalled: Sequence[Files | None], made: Iterator[Files | tuple[Problem, ...]], memory: Path
) -> Files:
    problems: list[Problem] = []
    all_files: Files = {}
    for key, known in zip(keys, recalled, strict=True):
        files = known if known is not None else next(made)
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


def _made(job: AnyJob) -> Files | tuple[Problem, ...]:
    try:
        return job.run()
    except ProblemsFound as found:
        return found.problems


@contextmanager
def _begun(todo: list[AnyJob]) -> Iterator[Callable[[], list[Files | tuple[Problem, ...]]]]:
    one_of_several = parent_process() is not None  # the other cores are for the others
    if one_of_several or sum(job.amount for job in todo) <= FEW:
        yield lambda: [_made(job) for job in todo]
        return
    with ProcessPoolExecutor(os.cpu_count(), mp_context=get_context("spawn")) as pool:
        waiting = [pool.submit(_made, job) for job in todo]
        yield lambda: [each.result() for each in waiting]


def _recall(path: Path) -> Files | None:
    try:
        with ZipFile(path) as kept:
            return {name: kept.read(name) for name in kept.namelist()}
    except (FileNotFoundError, BadZipFile):
        return None


def _keep(path: Path, files: Files) -> None:
    new = path.with_suffix(f".{os.getpid()}")
    with ZipFile(new, "w") as kept:
        for name, content in files.items():
            kept.writestr(name, content)
    new.replace(path)


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
