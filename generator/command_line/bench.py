"""`bench`: what a build takes and weighs, beside figures kept before."""

from __future__ import annotations

import json
from argparse import Namespace
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

from generator.command_line.ordering import read_order
from generator.pipeline.measuring import measure_build
from generator.pipeline.measuring_many import measure_many
from generator.pipeline.measuring_phone import measure_phone
from generator.pipeline.order import HERE

KEPT = HERE / "tests" / "bench.json"


def run(options: Namespace) -> int:
    """Builds into a folder of its own, from nothing, and prints one line a figure."""
    with TemporaryDirectory() as folder:
        order = replace(read_order(options), into=Path(folder))
        now = measure_build(order)
        now |= measure_phone(order.site)
        now |= measure_many(order, Path(folder) / "many") if options.large else {}
    before = json.loads(KEPT.read_text(encoding="utf-8")) if KEPT.is_file() else {}
    width = max(map(len, now))
    print(f"{'':<{width}}  {'now':>8}  {'kept':>8}  now/kept")
    for name, figure in now.items():
        kept = before.get(name, "")
        print(f"{name:<{width}}  {figure:>8g}  {kept:>8}  {f'{figure / kept:.2f}' if kept else '':>8}")
    if options.keep:
        KEPT.write_text(json.dumps(now, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
        print("These figures are kept.")
    return 0
