"""From options to an order for the pipeline."""

from __future__ import annotations

from argparse import Namespace

from generator.command_line.options import HERE
from generator.pipeline.order import Order


def read_order(options: Namespace) -> Order:
    """Which content, for which farm, into which folder."""
    return Order(content=options.content, into=getattr(options, "into", HERE / "build"), own=options.farm)
