"""`schema`: the JSON Schemas for editors."""

from __future__ import annotations

from argparse import Namespace

from generator.command_line.findings import counted
from generator.pipeline.editors import bring_schemas, stale_schemas
from generator.pipeline.order import HERE, Order
from generator.problems import Place, Problem, stop_at
from generator.reading import read_library


def run(options: Namespace) -> int:
    """Writes them, or with `--check` raises a problem for each that is not up to date."""
    order = Order(HERE / "content", HERE / "build")
    library = read_library(order.shared, order.farm).library
    stale = stale_schemas(library, HERE)
    if options.check:
        stop_at([Problem(Place(path.as_posix()), "is not up to date", "run `python3 run.py schema`") for path in stale])
        print("The schemas are up to date.")
        return 0
    fresh = set(bring_schemas(library, HERE))
    for path in stale:
        if HERE / path not in fresh:
            (HERE / path).unlink()
    print(f"{counted(len(stale), 'schema file')} changed.")
    return 0
