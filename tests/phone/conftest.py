"""The shipped programs of the pages about the plan, run without a browser."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest
from py_mini_racer import MiniRacer

from generator.computing import Workbook
from tests.formula.phone_machine import NUMBERS, shipped, without_modules
from tests.product import product_workbook

Ask = Callable[..., Any]


def machine(*modules: str, formulas: str = "") -> Ask:
    engine = MiniRacer()
    engine.eval(shipped(*modules) + without_modules(formulas))

    def ask(expression: str, **given: object) -> Any:
        names, values = ", ".join(given), ", ".join(json.dumps(value) for value in given.values())
        return json.loads(str(engine.eval(f"JSON.stringify((({names}) => ({expression}))({values}))")))

    return ask


@pytest.fixture(scope="session")
def workbook() -> Workbook:
    return product_workbook()


@pytest.fixture(scope="session")
def codes() -> Ask:
    """Runs an expression beside the encoder of QR codes."""
    return machine("qr_words.js", "qr_code.js")


@pytest.fixture(scope="session")
def ask(workbook: Workbook) -> Ask:
    """Runs an expression beside the demonstration's formulas, in which the given names stand for values."""
    modules = (*NUMBERS, "typed_text.js", "plan_codes.js", "solving.js", "part_of_day.js")
    formulas = workbook.javascript() + "const known = { inputs, choices, settle };\n"
    formulas += "const all = { inputs, choices, settle, compute, steps, uses, doubts };\n"
    return machine(*modules, formulas=formulas)
