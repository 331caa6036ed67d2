"""Prints problems the way a person reads them."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from generator.problems import Problem


def report(problems: Sequence[Problem]) -> None:
    """Each problem with its place and its remedy, then how many there are; on the error stream."""
    for problem in problems:
        print(problem, file=sys.stderr)
    print(f"\n{counted(len(problems), 'problem')}. Nothing was changed.", file=sys.stderr)


def counted(number: int, thing: str) -> str:
    """The number with its noun."""
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"
