"""Random plans computed by Python and by the shipped JavaScript: same numbers, same refusals, same watches."""

from __future__ import annotations

import random

from generator.computing import Workbook
from tests.formula.phone_machine import PhoneMachine
from tests.repeating import TIMES

RELATIVE = 1e-11
PLANS = 10_000
NUMBERS = 30_000 * TIMES
"""Enough days are computed for so many numbers, or all plans."""


def _random_changes(workbook: Workbook, chance: random.Random) -> dict[str, float | str]:
    changes: dict[str, float | str] = {}
    for name, entry in workbook.givens.inputs.items():
        if chance.random() < 0.6:
            value = chance.choice([entry.low, entry.high, *(chance.uniform(entry.low, entry.high) for _ in range(8))])
            changes[name] = float(round(value)) if entry.whole else value
    for name, options in workbook.givens.options.items():
        if chance.random() < 0.6:
            changes[name] = chance.choice(sorted(options))
    return changes


def test_the_phone_computes_what_python_computes(any_workbook: Workbook) -> None:
    workbook, chance = any_workbook, random.Random(20)
    machine = PhoneMachine(workbook.javascript())
    days = min(PLANS, NUMBERS // len(workbook.results))
    worst = 0.0
    for _ in range(0, days, 50):
        plans = [_random_changes(workbook, chance) for _ in range(min(50, days))]
        phones = machine.run("plans.map((changes) => compute(settle(changes)))", plans=plans)
        for changes, phone in zip(plans, phones, strict=True):
            day = workbook.compute(workbook.settler.settle(workbook.plan, changes))
            said = {
                name: {"sentence": refusal.key, "input": refusal.input, "because": refusal.because}
                for name, refusal in day.refused.items()
            }
            assert phone["refused"] == said
            assert phone["alerts"] == list(day.alerts)
            assert phone["values"].keys() == day.values.keys()
            for name, value in day.values.items():
                other = phone["values"][name]
                if isinstance(value, str):
                    assert other == value, name
                elif value != other:
                    worst = max(worst, abs(value - other) / max(abs(value), abs(other)))
                    assert worst < RELATIVE, (name, value, other)


def test_what_an_older_copy_kept_and_no_longer_fits_is_left_out(any_workbook: Workbook) -> None:
    machine = PhoneMachine(any_workbook.javascript())
    stale = {"no_such_thing": 3, "__proto__": 1, "toString": 2}
    stale |= {name: entry.high * 2 + 1 for name, entry in any_workbook.givens.inputs.items()}
    stale |= dict.fromkeys(any_workbook.givens.choices, "gone")
    assert machine.run("settle(stale)", stale=stale) == machine.run("settle({})")
    strange = dict.fromkeys(any_workbook.givens.inputs, "12")
    assert machine.run("settle(strange)", strange=strange) == machine.run("settle({})")
