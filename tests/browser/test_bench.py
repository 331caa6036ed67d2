"""The phone's part of the bench runs on the finished site; what it finds decides nothing.

It takes more than a minute: `BENCH=1 python3 run.py test tests/browser/test_bench.py`.
"""

import json
import os
import subprocess
import sys

import pytest

from generator.pipeline.measuring_phone import FEW, MANY, TAPS
from generator.pipeline.order import HERE, Order

MEASURE = """
import json, pathlib, sys
from generator.pipeline.measuring_phone import measure_phone
print(json.dumps(measure_phone(pathlib.Path(sys.argv[1]))))
"""


@pytest.mark.skipif("BENCH" not in os.environ, reason="takes more than a minute; BENCH=1 runs it")
def test_every_figure_is_measured(demo: Order) -> None:
    """In a process of its own: a browser's driver runs once in each."""
    words = [sys.executable, "-c", MEASURE, str(demo.site)]
    done = subprocess.run(words, cwd=HERE, capture_output=True, text=True, timeout=300)
    assert done.returncode == 0, done.stderr
    figures = json.loads(done.stdout)
    taps = {f"{what}, {entries} entries, ms" for what in TAPS.values() for entries in (FEW, MANY)}
    assert taps < set(figures)
    assert all(figure >= 0 for figure in figures.values())
    for change in ("A changed plan", "A step in a field of the plan"):
        assert 0 < figures[f"{change} is laid out, ms"] <= figures[f"{change} is painted, ms"]
