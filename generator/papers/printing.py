"""Prints all papers of an edition, on all processors, and keeps what is done for the next time."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Callable, Iterable, Mapping
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from multiprocessing import get_context
from pathlib import Path

from generator.papers.catalogue import sheets
from generator.papers.miniature import DOTS_PER_INCH, shrink
from generator.papers.paper import SIZES, Sheet, set_up
from generator.papers.typesetting import engine, picture, typeset
from generator.papers.wording import Data, Wording
from generator.problems import Problem, ProblemsFound, stop_at
from generator.telling.edition import Edition
from generator.telling.listing import Listed

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


def print_all(edition: Edition, memory: Path) -> tuple[dict[str, bytes], list[Listed]]:
    """Every file by its path below the site, and the list of papers for the page that offers them.

    `memory` is a folder that keeps what was set before. Raises ProblemsFound with every text that does not fit.
    """
    say = Wording(edition)
    found = sheets(say)
    return run_jobs(_jobs(found, say), memory), [_listed(sheet, edition.language) for sheet in found]


def print_some(edition: Edition, wanted: Callable[[Sheet], bool], size: str, memory: Path) -> dict[str, bytes]:
    """The wanted papers alone, each as a file by its own name."""
    say = Wording(edition)
    chosen = [sheet for sheet in sheets(say) if wanted(sheet) and size in sheet.sizes()]
    author = edition.library.this_farm.name
    jobs = [Job(f"{sheet.id}.pdf", (set_up(sheet, say, size),), sheet.title, author) for sheet in chosen]
    return run_jobs(jobs, memory)


def run_jobs(jobs: Iterable[Job], memory: Path) -> dict[str, bytes]:
    """Makes what is not remembered, remembers it, and forgets what nobody asked for this time."""
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
    return {file: (memory / key).read_bytes() for file, key in keys.items()}


def forget(memory: Path, kept: int = 600) -> None:
    """Takes out the oldest of what is remembered."""
    files = sorted(memory.iterdir(), key=lambda path: path.stat().st_mtime_ns, reverse=True)
    for path in files[kept:]:
        path.unlink()


def _results(todo: list[Job]) -> list[bytes | tuple[Problem, ...]]:
    if len(todo) < FEW:
        return [job.run() for job in todo]
    with ProcessPoolExecutor(os.cpu_count(), mp_context=get_context("spawn")) as pool:
        return list(pool.map(Job.run, todo, chunksize=4))


def _keep(path: Path, content: bytes) -> None:
    new = path.with_suffix(f".{os.getpid()}")
    new.write_bytes(content)
    new.replace(path)


def _jobs(found: list[Sheet], say: Wording) -> list[Job]:
    """Packs first, because they take longest."""
    edition = say.edition
    author, packs, rest = edition.library.this_farm.name, list[Job](), list[Job]()
    for size in SIZES:
        folder = f"papers/{edition.language}/{size}"
        data = {sheet.id: set_up(sheet, say, size) for sheet in found if size in sheet.sizes()}
        packs.append(Job(f"{folder}/pack.pdf", tuple(data.values()), f"{say.word('paper_pack')}, {author}", author))
        rest += [Job(f"{folder}/{name}.pdf", (one,), str(one["title"]), author) for name, one in data.items()]
    for sheet in found:
        one = set_up(sheet, say, sheet.sizes()[0])
        rest.append(Job(_picture_of(sheet, edition.language), (one,), sheet.title, author))
    return packs + rest


def _picture_of(sheet: Sheet, language: str) -> str:
    return f"papers/{language}/{sheet.id}.png"


def _listed(sheet: Sheet, language: str) -> Listed:
    files: Mapping[str, str] = {size: f"papers/{language}/{size}/{sheet.id}.pdf" for size in sheet.sizes()}
    return Listed(sheet.id, sheet.title, sheet.group, sheet.code, files, _picture_of(sheet, language))
