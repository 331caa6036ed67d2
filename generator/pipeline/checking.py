"""Content that is free of faults, with its numbers: what a build begins with, and all that `check` does."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from generator.pipeline.figuring import figure, open_content
from generator.pipeline.order import Order
from generator.problems import Problem, ProblemsFound, stop_at
from generator.reading.files import shown_path
from generator.rules import check_rules
from generator.telling.edition import Edition

Say = Callable[[str], None]


def read_and_check(order: Order, say: Say) -> Edition:
    """The content with the numbers of the farm's plan. Raises ProblemsFound with all faults of the first bad stage."""
    try:
        say("Reading the content")
        reading, workbook = open_content(order)
        say("Computing the numbers")
        edition = figure(reading, workbook)
        say("Checking the rules")
        stop_at(check_rules(reading, workbook, has_own_folder(order)))
    except ProblemsFound as found:
        raise ProblemsFound(told_to_the_farm(order, found.problems)) from None
    return edition


def has_own_folder(order: Order) -> bool:
    """Whether the farm stands outside the content, as those do who only use it."""
    return order.own is not None and not order.own.resolve().is_relative_to(order.content.resolve())


def told_to_the_farm(order: Order, problems: Iterable[Problem]) -> list[Problem]:
    """The same, with a word for a farm of its own about what is not its to change: there its own folder is at fault."""
    if not has_own_folder(order):
        return list(problems)
    shared, where = f"{shown_path(order.shared)}/", shown_path(order.farm)
    cure = f"this came of what stands in {where}: put back what it takes out, or change or `~remove` this entry there"
    return [
        replace(each, hint=f"{each.hint}; {cure}".removeprefix("; ")) if each.place.file.startswith(shared) else each
        for each in problems
    ]
