"""`build`: the site, and stop."""

from __future__ import annotations

from argparse import Namespace

from generator.command_line.findings import report_stops
from generator.command_line.ordering import read_order
from generator.pipeline.progress import Progress
from generator.pipeline.story import build


def run(options: Namespace) -> int:
    """Builds and says where the site is."""
    order = read_order(options)
    with Progress() as say:
        edition = build(order, say)
    print(f"The site is whole: {order.site}")
    report_stops(edition)
    return 0
