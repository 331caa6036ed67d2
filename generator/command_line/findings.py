"""Prints problems the way a person reads them."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from generator.command_line.table import as_typed
from generator.problems import Problem
from generator.telling.alerts import stops
from generator.telling.edition import Edition


def report(problems: Sequence[Problem]) -> None:
    """Each problem with its place and its remedy, then how many where there are several; on the error stream."""
    for problem in problems:
        print(problem, file=sys.stderr)
    if len(problems) > 1:
        print(f"\n{counted(len(problems), 'problem')}.", file=sys.stderr)


def in_one_line(problem: Problem) -> str:
    """Place, fault and remedy on one line, as programs and short answers have it."""
    return f"{problem.place}: {problem.fault}" + (f": {problem.hint}" if problem.hint else "")


def report_stops(edition: Edition) -> None:
    """What stands against the plan, which is no fault of the content: a day that cannot be is planned to be mended."""
    found = stops(edition)
    if found:
        print(f"The plan “{edition.plan}” is not ready. It has {counted(len(found), 'stop')}:")
    for sentence in found:
        print(as_typed(f"  STOP: {sentence}"))


def counted(number: int, thing: str) -> str:
    """The number with its noun."""
    return f"{number} {thing}" if number == 1 else f"{number} {thing}{'es' if thing.endswith('ch') else 's'}"
