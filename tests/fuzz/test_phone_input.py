"""What a phone is handed: links and codes of plans, plan files, typed values, record files."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from random import Random
from typing import Any

import pytest

from generator.computing import Workbook
from generator.records.taking import take_text
from tests.formula.phone_machine import NUMBERS
from tests.fuzz.budget import mutate, no_hang, rounds
from tests.phone.conftest import machine
from tests.product import product_workbook
from tests.records.conftest import phone
from tests.records.samples import DEMO
from tests.records.test_taking import told

__all__ = ["phone"]
Ask = Callable[..., Any]
PIECES = ["~", "=", ":", "%", "<b>", "__proto__", "constructor", "1e999", "-0", "NaN", "null", "0x1", "é", "\u202e",
          "%00", "%E0%A4", "😀", '"', "\\", "{", "[", "9" * 400, "\ud800", ",", "true"]  # fmt: skip
REFUSALS = {"pass_none", "pass_damaged", "pass_version", "pass_range", "pass_option", "pass_unknown", "pass_no_file"}


@pytest.fixture(scope="module")
def workbook() -> Workbook:
    return product_workbook()


@pytest.fixture(scope="module")
def ask(workbook: Workbook) -> Ask:
    formulas = workbook.javascript() + "const known = { inputs, choices, settle };\n"
    formulas += "const typing = { inputs, choices, measures, measureOf, units };\nconst say = (id) => id;\n"
    return machine(*NUMBERS, "typed_text.js", "plan_codes.js", "neat_steps.js", "typed.js", formulas=formulas)


def _is_fit(read: dict[str, Any], workbook: Workbook) -> bool:
    """Whether every change is one that the field of the plan would take, and the name is short and of one line."""
    givens = workbook.givens
    for name, value in read["changes"].items():
        if isinstance(value, str):
            assert value in givens.options[name], (name, value)
        else:
            assert givens.inputs[name].low <= value <= givens.inputs[name].high, (name, value)
    return len(read["name"]) <= 40 and read["name"].isprintable()


def _changes(chance: Random, workbook: Workbook) -> dict[str, float]:
    inputs = workbook.givens.inputs
    return {name: inputs[name].low for name in chance.sample(list(inputs), 4)}


def test_codes_of_plans(ask: Ask, workbook: Workbook) -> None:
    """Half of them get a right checksum, so that the rows behind it are looked at too."""
    for chance in rounds(least=20):
        text = mutate(chance, ask("writePlan('Tuesday', changes, known)", changes=_changes(chance, workbook)), PIECES)
        if chance.random() < 0.5:
            body = text.split("~", 2)[-1]
            text = f"1~{ask('sum(body, 6)', body=body)}~{body}"
        with no_hang():
            read = ask("readPlan(text, known)", text=text)
        assert read.get("refused") in REFUSALS or _is_fit(read, workbook), text


def test_files_of_plans(ask: Ask, workbook: Workbook) -> None:
    for chance in rounds(least=20):
        text = mutate(chance, ask("writePlanFile('a', changes, known)", changes=_changes(chance, workbook)), PIECES)
        with no_hang():
            read = ask("readPlanFile(text, known)", text=text)
        assert read.get("refused") in REFUSALS or _is_fit(read, workbook), text


@pytest.mark.parametrize("text", ["1~" * 500_000, "1~abcdef~" + "%" * 500_000, "=" * 1_000_000, "[" * 500_000])
def test_huge_codes_do_not_hang(ask: Ask, text: str) -> None:
    with no_hang():
        assert ask("readPlan(text, known)", text=text)["refused"] in REFUSALS
        assert ask("readPlanFile(text, known)", text=text)["refused"] in REFUSALS


def test_typed_values(ask: Ask, workbook: Workbook) -> None:
    """Either a number comes of it, or a sentence that refuses it."""
    pieces = [
        "constructor",
        "1",
        "7",
        ".",
        ",",
        "-",
        "−",
        " ",
        ":",
        "°F",
        "kg",
        "min",
        "e9",
        "½",
        "<b>",
        "\u00a0",
        "١",
        *PIECES,
    ]
    names = list(workbook.givens.inputs)
    for chance in rounds(least=20):
        text = "".join(chance.choices(pieces, k=chance.randrange(12)))
        with no_hang():
            read = ask("readTyped(text, id, typing, 'us', 0)", text=text, id=chance.choice(names))
        infinite = len(text) > 300 and read.get("value", 0) is None  # the range of the field refuses it
        assert infinite or isinstance(read.get("refused"), str) or isinstance(read["value"], int | float), (text, read)


@pytest.mark.parametrize("unit", ["constructor", "valueOf", "__proto__"])
def test_what_every_object_has_is_no_unit(ask: Ask, unit: str) -> None:
    assert ask("readTyped(text, 'break_time', typing, 'us', 0)", text=f"5 {unit}") in (
        {"refused": "read_unit"},
        {"refused": "read_number"},
    )


def test_record_files_fare_the_same_on_both_hands(phone: Ask) -> None:
    whole = json.loads(Path(DEMO[0]).read_text(encoding="utf-8"))
    for chance in rounds(least=20):
        some = {**whole, "entries": chance.sample(whole["entries"], min(5, len(whole["entries"])))}
        text = mutate(chance, json.dumps(some), PIECES)
        with no_hang():
            taken = take_text(text, {})
        with no_hang():
            other = phone("takeFile(text, {})", text=text)
        assert other == told(taken), text


@pytest.mark.parametrize("text", ["[" * 1_000_000, '{"a":' * 100_000, '"' + "\\u0041" * 500_000, "9" * 1_000_000])
def test_huge_record_files_do_not_hang(text: str) -> None:
    with no_hang():
        assert [fault.code for _, fault in take_text(text, {}).faults] in (["not_json"], ["not_ours"])
