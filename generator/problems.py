"""Faults in what a person wrote, each with its place and its remedy."""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple


class Place(NamedTuple):
    """A spot in a file; line and column count from 1, and 0 means the file as a whole."""

    file: str
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        return ":".join(str(part) for part in (self.file, self.line, self.column) if part)


@dataclass(frozen=True, order=True)
class Problem:
    """One fault: where it is, what is wrong, what to do about it, and optional lines to show below."""

    place: Place
    fault: str
    hint: str = ""
    excerpt: tuple[str, ...] = ()

    def __str__(self) -> str:
        lines = [f"{self.place}: {self.fault}"]
        if self.hint:
            lines.append(f"    hint: {self.hint}")
        return "\n".join([*lines, *(f"    {line}" for line in self.excerpt)])


class ProblemsFound(Exception):  # noqa: N818 - it carries findings, it is not one error
    """Raised once, at the end of a stage, with every problem that stage found, sorted by place."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(sorted(set(problems)))
        super().__init__("\n".join(str(problem) for problem in self.problems))


def about_file(fault: OSError) -> Problem:
    """What a disk refuses, with its remedy; a reader of content says more about what it cannot read."""
    gone = isinstance(fault, FileNotFoundError)
    hint = "see that it is there" if gone else "see that the folder can be written and has room"
    return Problem(
        Place(str(fault.filename2 or fault.filename or "files")), (fault.strerror or str(fault)).lower(), hint
    )


def about_lost_process(work: str) -> Problem:
    """What is told where a system ends a process in the middle of its work, as it does when memory runs short."""
    return Problem(Place(work), "the process that did it was ended from outside", "give it 0.5 GB of memory; try again")


def did_you_mean(word: str, known: Iterable[str], otherwise: str = "") -> str:
    """A hint with the nearest known word, or `otherwise` when none is near."""
    near = difflib.get_close_matches(word, list(known), n=1, cutoff=0.6)
    return f"did you mean `{near[0]}`?" if near else otherwise


def as_shown(text: str, longest: int = 60) -> str:
    """Text from a file made safe to print in a message: in backticks, cut short, hidden characters by code."""
    short = text if len(text) <= longest else text[:longest] + "…"
    return "`" + "".join(char if char.isprintable() else f"U+{ord(char):04X}" for char in short) + "`"


def stop_at(problems: list[Problem]) -> None:
    """Ends a stage: raises ProblemsFound when it found any."""
    if problems:
        raise ProblemsFound(problems)
