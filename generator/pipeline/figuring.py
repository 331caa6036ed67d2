"""The day's numbers of a plan, with whatever a person changes in it."""

from __future__ import annotations

from collections.abc import Sequence

from generator.computing import Workbook
from generator.pipeline.order import CHANGES, Order
from generator.pipeline.release import read_release
from generator.pipeline.wishes import Wishes, changed_values, plan_values
from generator.problems import Problem, ProblemsFound, stop_at
from generator.reading import Reading, read_library
from generator.rendering import Edition


def open_content(order: Order) -> tuple[Reading, Workbook]:
    """The library of an order, and its formulas ready to compute. Raises ProblemsFound."""
    reading = read_library(order.shared, order.farm)
    return reading, Workbook.of(reading, memory=order.memory)


def figure(reading: Reading, workbook: Workbook, plan: str | None = None, changes: Sequence[str] = ()) -> Edition:
    """The edition for a plan, by id or file, or else the farm's own, with `ID=VALUE` changes to it.

    Raises ProblemsFound with all values that cannot be used.
    """
    problems: list[Problem] = []
    release, library = read_release(CHANGES), reading.library
    planned = _read(workbook, plan_values(plan or library.this_farm.plan, library, problems), problems)
    changed = _read(workbook, changed_values(changes, problems), problems)
    stop_at(problems)
    settings = workbook.settler.settle(planned, changed)
    return Edition(
        reading=reading,
        book=workbook.book,
        workbook=workbook,
        settings=settings,
        day=workbook.compute(settings),
        version=release.version,
        made_on=release.day.date().isoformat(),
    )


def _read(workbook: Workbook, wishes: Wishes, problems: list[Problem]) -> dict[str, float | str]:
    values = {name: wish.value for name, wish in wishes.items()}
    try:
        return workbook.settler.read(values, lambda name: wishes[name].place)
    except ProblemsFound as found:
        problems.extend(found.problems)
        return {}
