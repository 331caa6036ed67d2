"""Runs any workbook as the build does, in Python, or as phones do, with the shipped JavaScript."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any, Literal

from py_mini_racer import MiniRacer

from generator.computing import Workbook

PHONE = Path(__file__).resolve().parents[2] / "site_overrides" / "phone"
NUMBERS = (
    "runtime.js",
    "choosing.js",
    "ranges.js",
    "settling.js",
    "breathing.js",
    "naming.js",
    "running.js",
    "writing.js",
    "showing.js",
)
Hand = Literal["python", "phone"]
HANDS: tuple[Hand, Hand] = ("python", "phone")


def without_modules(source: str) -> str:
    """A module as a plain script: imports and the word `export` taken out."""
    source = re.sub(r"^import [^;]*;\n", "", source, flags=re.MULTILINE)
    return re.sub(r"^export ", "", source, flags=re.MULTILINE)


def shipped(*names: str) -> str:
    """The shipped modules of those names as one script."""
    return "\n".join(without_modules((PHONE / name).read_text("utf-8")) for name in names)


class PhoneMachine:
    """The shipped JavaScript with one workbook's formulas."""

    def __init__(self, formulas: str = "") -> None:
        self._engine = MiniRacer()
        self._engine.eval(shipped(*NUMBERS) + without_modules(formulas))

    def run(self, expression: str, **given: object) -> Any:
        """The value of an expression, in which the given names stand for values."""
        names, values = ", ".join(given), ", ".join(json.dumps(value) for value in given.values())
        return json.loads(str(self._engine.eval(f"JSON.stringify((({names}) => ({expression}))({values}))")))


@cache
def phone_of(formulas: str) -> PhoneMachine:
    """One machine for each file of formulas."""
    return PhoneMachine(formulas)


def compute(workbook: Workbook, settings: Mapping[str, float | str], hand: Hand) -> dict[str, Any]:
    """`values`, `refused` (id to the key of its sentence) and `alerts` of a day, by either hand."""
    if hand == "python":
        day = workbook.compute(settings)
        refused = {name: refusal.key for name, refusal in day.refused.items()}
        return {"values": dict(day.values), "refused": refused, "alerts": list(day.alerts)}
    day = phone_of(workbook.javascript()).run("compute(settings)", settings=dict(settings))
    return {**day, "refused": {name: refusal["sentence"] for name, refusal in day["refused"].items()}}


def settle(workbook: Workbook, changes: Mapping[str, float | str], hand: Hand) -> dict[str, Any]:
    """The farm's own plan with changes in SI, by either hand."""
    if hand == "python":
        return dict(workbook.settler.settle(workbook.plan, changes))
    return dict(phone_of(workbook.javascript()).run("settle(changes)", changes=dict(changes)))
