"""Between which values the numbers of a drill are drawn, and the corners at which it is tried out beforehand."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice, product

from generator.computing import Workbook
from generator.model.teaching import Drill

Bounds = dict[str, tuple[float, float]]
MOST_CORNERS = 81


def bounds(workbook: Workbook, drill: Drill) -> tuple[Bounds, Bounds]:
    """Low and high in SI, of varied inputs and of what is drawn. Raises UnitFault where a text is no value."""
    measures, read = workbook.library.measures, workbook.book.read
    varied = {
        name: (read(low, workbook.items[name].measure), read(high, workbook.items[name].measure))
        for name, (low, high) in drill.vary.items()
    }
    drawn = {
        name: (read(draw.low, measures[draw.measure]), read(draw.high, measures[draw.measure]))
        for name, draw in drill.draws.items()
    }
    return varied, drawn


def corners(varied: Bounds, drawn: Bounds) -> Iterator[tuple[dict[str, float], dict[str, float]]]:
    """Both ends of everything that varies, in all mixtures, and of a few things the middles too: changes, and draws."""
    ranges = (*varied.values(), *drawn.values())
    with_middles = 3 ** len(ranges) <= MOST_CORNERS
    sides = [(low, (low + high) / 2, high) if with_middles else (low, high) for low, high in ranges]
    for mixture in islice(product(*sides), MOST_CORNERS):
        yield dict(zip(varied, mixture, strict=False)), dict(zip(drawn, mixture[len(varied) :], strict=True))
