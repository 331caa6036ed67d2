"""The demonstration's content with its drills, and the shipped programs that ask them."""

from __future__ import annotations

import json
from typing import Any

import pytest
from py_mini_racer import MiniRacer

from generator.model.library import Library
from generator.reading import Reading
from generator.teaching.drill_program import drill_program
from generator.telling.edition import Edition
from generator.telling.figures import Figures
from tests.formula.phone_machine import NUMBERS, shipped, without_modules
from tests.product import product_edition, product_reading


@pytest.fixture(scope="session")
def reading() -> Reading:
    return product_reading()


@pytest.fixture(scope="session")
def library(reading: Reading) -> Library:
    return reading.library


@pytest.fixture(scope="session")
def edition() -> Edition:
    return product_edition()


class Phone:
    """Asks the shipped programs; chance is a list of numbers from 0 to 1, used round and round."""

    def __init__(self, edition: Edition) -> None:
        drills = drill_program(edition, Figures(edition))["phone/drills.js"]
        self._engine = MiniRacer()
        modules = shipped(*NUMBERS, "records.js", "boxes.js", "posing.js", "hiding.js", "skills_signed.js")
        modules += "\nconst names = {}, options = {}, symbols = {};\n" + shipped("drill_table.js")
        self._engine.eval(modules + without_modules(edition.workbook.javascript()) + without_modules(drills))
        self._engine.eval(
            "const luck = (list) => { let at = 0; return () => list[at++ % list.length]; };"
            "const rounded = (value, of) => (inputs[of]?.whole ? Math.round(value) : value);"
            "const table = (list) => ({ changes: {}, random: luck(list), round: rounded,"
            "  say: (text, values) => text.replace(/\\{([a-z0-9_]+)(?: first)?\\}/g, (_, id) => String(values[id])) });"
        )

    def ask(self, expression: str, **given: object) -> Any:
        names, values = ", ".join(given), ", ".join(json.dumps(value) for value in given.values())
        return json.loads(str(self._engine.eval(f"JSON.stringify((({names}) => ({expression}))({values})) ?? 'null'")))


@pytest.fixture(scope="session")
def phone(edition: Edition) -> Phone:
    return Phone(edition)
