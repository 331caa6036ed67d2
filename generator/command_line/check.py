"""`check`: every fault in the content, and no build."""

from __future__ import annotations

from argparse import Namespace

from generator.command_line.findings import counted, report_stops
from generator.command_line.ordering import read_order
from generator.pipeline.checking import read_and_check
from generator.pipeline.progress import Progress


def run(options: Namespace) -> int:
    """Says what was checked; faults are raised and reported with their places."""
    with Progress() as say:
        edition = read_and_check(read_order(options), say)
    library = edition.library
    parts = ((library.procedures, "procedure"), (library.quantities, "number"), (library.watches, "watch"))
    print("No faults: " + ", ".join(counted(len(entries), thing) for entries, thing in parts) + ".")
    report_stops(edition)
    return 0
