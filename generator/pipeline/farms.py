"""Many farms at once: each is a build of its own, and they share what is equal."""

from __future__ import annotations

import os
import time
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor, ThreadPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from multiprocessing import get_context
from pathlib import Path

from generator.pipeline.freshness import is_fresh
from generator.pipeline.order import Order
from generator.pipeline.story import build
from generator.problems import Place, Problem, ProblemsFound, about_file, about_lost_process, stop_at

SHARED = "shared"
"""The folder beside those of the farms with what they share."""


@dataclass(frozen=True)
class Built:
    """What became of one farm."""

    order: Order
    seconds: float
    problems: tuple[Problem, ...] = ()


def orders_of(farms: Sequence[Path], content: Path, into: Path) -> list[Order]:
    """An order for each farm's folder, into a folder of its name. Raises ProblemsFound."""
    problems = [Problem(Place(str(farm)), "is no folder", "name farms' folders") for farm in farms if not farm.is_dir()]
    named: dict[str, Path] = {SHARED: into / SHARED}
    for farm in farms:
        first = named.setdefault(farm.resolve().name, farm)
        if first is not farm:
            problems.append(Problem(Place(str(farm)), f"has the name of {first}", "give the folder another name"))
    stop_at(problems)
    return [Order(content, into / farm.resolve().name, farm, remembered=into / SHARED) for farm in farms]


def build_farms(orders: Sequence[Order], processes: int | None = None) -> Iterator[Built]:
    """Builds what is not fresh, in as many processes as there are cores; yields each farm when it is done.

    A farm with faults keeps the site it had, and the others are built all the same.
    """
    with ThreadPoolExecutor(processes or os.cpu_count()) as hands:
        for done in as_completed([hands.submit(_build_in_a_process, order) for order in orders]):
            yield done.result()


def _build_in_a_process(order: Order) -> Built:
    """One farm a process: the hundredth finds as much memory free as the first."""
    start = time.perf_counter()
    try:
        with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as process:
            return process.submit(_build_one, order).result()
    except BrokenProcessPool:
        return Built(order, time.perf_counter() - start, (about_lost_process(str(order.own)),))


def _build_one(order: Order) -> Built:
    start = time.perf_counter()
    try:
        if not is_fresh(order):
            build(order, say=lambda step: None)
    except ProblemsFound as found:
        return Built(order, time.perf_counter() - start, found.problems)
    except OSError as fault:
        return Built(order, time.perf_counter() - start, (about_file(fault),))
    return Built(order, time.perf_counter() - start)
