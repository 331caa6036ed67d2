"""A workbook cut down to a few results and what they need, for tests that run thousands of days."""

from __future__ import annotations

from dataclasses import replace

from generator.computing import Workbook


def narrow(workbook: Workbook, *wanted: str) -> Workbook:
    """The same formulas, but only those that `wanted` rests on, and no watches."""
    needed, waiting = set[str](), list(wanted)
    while waiting:
        name = waiting.pop()
        if name in workbook.results and name not in needed:
            needed.add(name)
            waiting.extend(workbook.uses(name))
    results = {name: result for name, result in workbook.results.items() if name in needed}
    return replace(workbook, results=results, watches={})
