"""Faults in what a person wrote, each with its place and its remedy."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, order=True)
class Place:
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
