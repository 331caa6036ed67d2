"""The day's numbers of a plan, with whatever a person changes in it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from generator.computing import Workbook
from generator.model.library import Library
from generator.pipeline.order import CHANGES, Order
from generator.pipeline.release import read_release
from generator.pipeline.wishes import Wishes, changed_values, plan_values
from generator.problems import Problem, ProblemsFound, stop_at
from generator.reading import Reading, read_library
from generator.reading.translation import Translation
from generator.telling.edition import Edition


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
    language = library.this_farm.languages[0]
    settings = workbook.settler.settle(planned, changed)
    return Edition(
        reading=reading,
        book=workbook.book,
        workbook=workbook,
        settings=settings,
        day=workbook.compute(settings),
        plan=_title(plan or library.this_farm.plan, library, changed),
        translate=Translation.of(language, [reading.shared, reading.farm]).text,
        language=language,
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


def _title(plan: str, library: Library, changes: Mapping[str, object]) -> str:
    """The plan's title, or its file's name, and a sign that values were changed for this run."""
    title = library.plans[plan].title if plan in library.plans else Path(plan).stem
    return f"{title} *" if changes else title
