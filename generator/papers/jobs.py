"""What is to be made: a paper, papers set together, or a pack of them. Equal jobs make equal bytes."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass

from generator.papers.binding import bind, papers_in
from generator.papers.data import Data
from generator.papers.miniature import DOTS_PER_INCH, shrink
from generator.papers.typesetting import Quire, forget, typeset, typeset_quire
from generator.problems import Problem, ProblemsFound, stop_at

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
        try:
            made = self._set(self.letters)
        except ProblemsFound:
            self._find_all()
            made = self._set("")  # the font lacks a letter of a text that no paper shows
        pictures = dict(zip(filter(None, self.pictures), map(shrink, made.fronts), strict=True))
        return {self.file: made.bound} | dict(zip(self.parts, made.parts, strict=True)) | pictures

    def _set(self, letters: str) -> Quire:
        pictured = [bool(name) for name in self.pictures]
        return typeset_quire(list(self.papers), self.title, self.author, letters, pictured, DOTS_PER_INCH)

    def _find_all(self) -> None:
        """Sets each paper alone, since the engine stops at the first that does not fit. Raises what is found."""
        alone = (made(Job("", paper, self.title, self.author)) for paper in self.papers)
        stop_at([problem for found in alone if isinstance(found, tuple) for problem in found])


@dataclass(frozen=True)
class PackJob:
    """A pack to bind from files of papers."""

    file: str
    quires: tuple[bytes, ...]
    title: str

    @property
    def amount(self) -> int:
        """How many files are bound."""
        return len(self.quires)

    def told(self) -> list[object]:
        """All that the bytes depend on beside the engine."""
        return [self.file, self.title, *(hashlib.sha256(quire).hexdigest() for quire in self.quires)]

    def run(self) -> Files:
        """The pack."""
        return {self.file: bind([paper for quire in self.quires for paper in papers_in(quire)], self.title)}


AnyJob = Job | QuireJob | PackJob


def made(job: AnyJob) -> Files | tuple[Problem, ...]:
    """The files of a job, or what hinders them."""
    try:
        return job.run()
    except ProblemsFound as found:
        return found.problems
    finally:
        forget()
