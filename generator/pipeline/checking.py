"""Content that is free of faults, with its numbers: what a build begins with, and all that `check` does."""

from __future__ import annotations

from collections.abc import Callable

from generator.pipeline.figuring import figure, open_content
from generator.pipeline.order import Order
from generator.problems import stop_at
from generator.rules import check_rules
from generator.telling.edition import Edition

Say = Callable[[str], None]


def read_and_check(order: Order, say: Say) -> Edition:
    """The content with the numbers of the farm's plan. Raises ProblemsFound with all faults of the first bad stage."""
    say("Reading the content")
    reading, workbook = open_content(order)
    say("Computing the numbers")
    edition = figure(reading, workbook)
    say("Checking the rules")
    stop_at(check_rules(reading, workbook))
    return edition
