"""Records on both hands: the Python of the computer and the shipped JavaScript of phones."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from typing import Any

import pytest
from py_mini_racer import MiniRacer

from generator.pipeline.order import OVERRIDES
from generator.pipeline.recording import record_book
from generator.reading import Reading
from generator.records.days import RecordBook
from generator.records.shape import record_schema
from tests.product import product_reading, product_workbook

MODULES = ("records.js", "ranges.js", "record_check.js", "merge.js", "judging.js", "curve.js", "record_table.js")
Phone = Callable[..., Any]


@pytest.fixture(scope="session")
def phone() -> Phone:
    """Evaluates an expression in which the shipped functions, and the given names, stand for values."""
    engine = MiniRacer()
    script = f"const format = {json.dumps(record_schema())};\n"
    for name in MODULES:
        source = (OVERRIDES / "phone" / name).read_text("utf-8")
        source = re.sub(r"^import [^;]*;\n", "", source, flags=re.MULTILINE)
        script += re.sub(r"^export ", "", source, flags=re.MULTILINE)
    engine.eval(script)

    def run(expression: str, **given: object) -> Any:
        names, values = ", ".join(given), ", ".join(json.dumps(value) for value in given.values())
        return json.loads(str(engine.eval(f"JSON.stringify((({names}) => ({expression}))({values})) ?? 'null'")))

    return run


@pytest.fixture(scope="session")
def reading() -> Reading:
    return product_reading()


@pytest.fixture(scope="session")
def book(reading: Reading) -> RecordBook:
    return record_book(reading, product_workbook())
