"""Days computed by both hands: values worked out on paper, refusals, watches, order."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from generator.computing import Refusal, Workbook
from generator.formula import names
from generator.reading import read_library
from tests.computing.conftest import CONTENTS, ROOT
from tests.formula.phone_machine import HANDS, Hand, compute, phone_of

by_both = pytest.mark.parametrize("hand", HANDS)


def day_of(workbook: Workbook, hand: Hand, **changes: str) -> dict[str, Any]:
    return compute(workbook, workbook.settle({}, changes), hand)


@by_both
def test_a_day_worked_out_on_paper(hand: Hand, bakery: Workbook) -> None:
    """24 loaves of 900 g with 68 % water and 2 % salt; 25 °C wanted in a room of 22 °C; 8 places in the oven."""
    values = day_of(bakery, hand)["values"]
    assert values["flour_mass"] == pytest.approx(24 * 0.9 / 1.7)
    assert values["water_mass"] == pytest.approx(24 * 0.9 / 1.7 * 0.68)
    assert values["water_temperature"] == pytest.approx(273.15 + 25 + 2 * 3)
    assert values["proof_time"] == pytest.approx((5 - 2 * 3 / 4) * 3600)  # table: 5 h at 22 °C, 3 h at 26 °C
    assert values["oven_loads"] == 3
    assert values["hand_rate_shape"] == pytest.approx(1 / 45)
    assert values["slowest_rate"] == pytest.approx(1 / 45)
    assert values["slowest_work"] == "shape"
    assert values["ready_time"] == pytest.approx(4.5 * 3600 + 24 * 45 + 3.5 * 3600 + 3 * 38 * 60)


@by_both
def test_a_choice_changes_a_formula(hand: Hand, bakery: Workbook) -> None:
    white, brown = (day_of(bakery, hand, flour_kind=kind)["values"]["proof_time"] for kind in ("white", "wholemeal"))
    assert brown == pytest.approx(1.1 * white)


@by_both
def test_what_cannot_be_met_is_refused_by_name(hand: Hand, bakery: Workbook) -> None:
    day = day_of(bakery, hand, room_temperature="5 °C", dough_temperature="30 °C")
    assert "water_temperature" not in day["values"]
    assert day["refused"] == {"water_temperature": "water_temperature:0"}


def test_a_refusal_says_what_to_look_at(bakery: Workbook) -> None:
    day = bakery.compute(bakery.settle({}, {"room_temperature": "5 °C", "dough_temperature": "30 °C"}))
    sentence = "The room is too cold for this dough; warm the flour first."
    assert day.refused == {"water_temperature": Refusal(sentence, "room_temperature", None, "water_temperature:0")}
    assert bakery.sentences()["water_temperature:0"] == sentence


@by_both
def test_watches_hold_or_not(hand: Hand, bakery: Workbook) -> None:
    assert day_of(bakery, hand)["alerts"] == []
    assert day_of(bakery, hand, oven_temperature="285 °C")["alerts"] == ["burns_easily"]


def test_uses_and_all_that_a_number_rests_on(bakery: Workbook) -> None:
    assert bakery.uses("flour_mass") == ("loaves", "loaf_mass", "water_share", "salt_share")
    assert bakery.uses("hand_rate_scale") == ("work_time_scale",)
    assert bakery.uses("loaves") == ()
    assert bakery.rests_on("proof_time") == {"proof_time", "dough_temperature", "flour_kind"}
    assert "work_time_shape" in bakery.rests_on("ready_time")


def test_everything_comes_after_what_it_uses(any_workbook: Workbook) -> None:
    seen = set[str]()
    for name in any_workbook.ids:
        assert seen.issuperset(any_workbook.uses(name)), name
        seen.add(name)
    assert len(seen) == len(any_workbook.ids)


def test_the_file_for_phones_is_the_same_at_every_run(tmp_path: Path) -> None:
    shared, farm = map(str, CONTENTS["bakery"])
    memory = str(tmp_path / "units.json")
    Workbook.of(read_library(*CONTENTS["bakery"]), Path(memory))
    code = (
        "from pathlib import Path; from generator.computing import Workbook;"
        "from generator.reading import read_library;"
        f"reading = read_library(Path({shared!r}), Path({farm!r}));"
        f"print(Workbook.of(reading, Path({memory!r})).javascript())"
    )

    def run(seed: str) -> bytes:
        environment = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)}
        return subprocess.run([sys.executable, "-c", code], env=environment, check=True, capture_output=True).stdout

    assert run("1") == run("2")


def test_the_file_for_phones_tells_what_pages_need(bakery: Workbook) -> None:
    phone = phone_of(bakery.javascript())
    assert phone.run("inputs.loaves") == {
        "low": 1, "high": 400, "step": None, "whole": True, "default": 24, "measure": "loaves", "group": "dough",
    }  # fmt: skip
    assert phone.run("choices.flour_kind") == {
        "default": "white",
        "options": {"white": {}, "wholemeal": {"water_share": 0.8}},
    }
    assert phone.run("plan") == {"loaves": 40, "flour_kind": "wholemeal"}
    assert phone.run("measureOf.slowest_work") == "member"
    assert phone.run("units['degF'].offset") == pytest.approx(459.67 * 5 / 9)


def test_a_phone_reads_what_each_result_uses_from_its_formula(any_workbook: Workbook) -> None:
    phone = phone_of(any_workbook.javascript())
    assert phone.run("uses") == {name: list(any_workbook.uses(name)) for name in any_workbook.results}
    by_watch = phone.run("Object.fromEntries(Object.entries(watches).map(([id, { uses }]) => [id, uses]))")
    assert by_watch == {name: list(names(tree)) for name, tree in any_workbook.watches.items()}


def test_workings_of_every_result_can_be_read(any_workbook: Workbook) -> None:
    from xml.etree import ElementTree

    computed = any_workbook.compute(any_workbook.settler.settle(any_workbook.plan, {})).values
    for name in any_workbook.results:
        working = any_workbook.working(name)
        for markup in (working.words, working.numbers):
            assert ElementTree.fromstring(markup).tag == "math"
        assert f'data-quantity="{name}"' in working.numbers
        assert name not in computed or ">–<" not in working.numbers


def test_titles_of_families_name_the_member(bakery: Workbook) -> None:
    assert "<mi>Loaves an hour: Scaling</mi>" in bakery.working("slowest_rate").words
