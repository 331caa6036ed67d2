"""`words`: the catalogues for translators."""

from __future__ import annotations

from argparse import Namespace

from generator.command_line.ordering import read_order
from generator.pipeline.catalogues import bring_catalogues, catalogues
from generator.problems import Place, Problem, stop_at
from generator.reading import read_library


def run(options: Namespace) -> int:
    """Brings all up to date, the farm's own too, and tells their state.

    With `--check` nothing is written, and a problem is raised for each language with messages missing.
    """
    order = read_order(options)
    library = read_library(order.shared, order.farm).library
    if not options.check:
        print(f"The template for translators is {bring_catalogues(library, order.shared, order.farm)}")
    states = [state for layer in (order.shared, order.farm) for state in catalogues(layer)]
    for state in states:
        print(f"{state.file.stem}: {state.all - state.missing} of {state.all} messages are translated")
    if options.check:
        hint = "translate them, and take the mark `fuzzy` from those that were looked at"
        missing = [(Place(str(state.file)), state.missing) for state in states if state.missing]
        stop_at([Problem(place, f"{number} messages are missing", hint) for place, number in missing])
    return 0
