"""The day's numbers of a plan, with whatever a person changes in it."""

from __future__ import annotations

from collections.abc import Mapping

from generator.computing import Workbook
from generator.pipeline.order import CHANGES, Order
from generator.pipeline.release import read_release
from generator.reading import Reading, read_library
from generator.rendering import Edition


def open_content(order: Order) -> tuple[Reading, Workbook]:
    """The library of an order, and its formulas ready to compute. Raises ProblemsFound."""
    reading = read_library(order.shared, order.farm)
    return reading, Workbook.of(reading)


def figure(reading: Reading, workbook: Workbook, plan: Mapping[str, str], changes: Mapping[str, str]) -> Edition:
    """The edition for a plan's values and changes to them, as a person writes them. Raises ProblemsFound."""
    release = read_release(CHANGES)
    settings = workbook.settle(plan, changes)
    return Edition(
        reading=reading,
        book=workbook.book,
        workbook=workbook,
        settings=settings,
        day=workbook.compute(settings),
        version=release.version,
        made_on=release.day.date().isoformat(),
    )
