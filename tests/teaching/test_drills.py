"""Every question against content: on the phone the right answer is the one that Python finds, whatever is drawn."""

from __future__ import annotations

import math
import random
from xml.etree import ElementTree

import pytest
from py_mini_racer import MiniRacer

from generator.model.library import Library
from generator.teaching.drill_bounds import bounds
from generator.teaching.drill_formulas import link_drills, right_answers, work_out
from generator.teaching.drill_program import in_backquotes
from generator.teaching.written import address_of, parts_of
from generator.telling.edition import Edition
from tests.product import product_library
from tests.teaching.conftest import Phone

DRILLS = product_library().drills
WITH_NUMBERS = [name for name, drill in DRILLS.items() if drill.vary or drill.draws or drill.works]
SUBJECTS = {
    "signs of death": "signs_of_death",
    "scald test": "feather_test",
    "gas lighting order": "order_of_lighting",
    "leak": "finding_a_leak",
    "burns": "burned_helper",
    "chill time limit": "time_left_to_the_limit",
    "evisceration": "order_of_drawing",
    "condemn": "whole_bird_or_spot",
    "cleaning order": "order_of_cleaning",
}


def luck(seed: str) -> list[float]:
    chance = random.Random(seed)
    return [chance.random() for _ in range(97)]


def test_there_are_enough_and_all_that_matters_is_asked() -> None:
    assert len(DRILLS) >= 45
    assert set(SUBJECTS.values()) <= set(DRILLS)
    assert sum(bool(drill.picture) for drill in DRILLS.values()) >= 6
    assert sum(bool(drill.arrange) for drill in DRILLS.values()) >= 8
    assert len(WITH_NUMBERS) >= 12


@pytest.mark.parametrize("name", DRILLS)
def test_the_phone_asks_it_with_one_right_answer(name: str, phone: Phone, library: Library) -> None:
    drill = library.drills[name]
    for seed in range(5):
        asked = phone.ask(
            "pose(drills[name], { settle, compute }, table(chance))", name=name, chance=luck(f"{name}{seed}")
        )
        assert asked is not None
        choices = asked["choices"]
        if drill.arrange:
            steps = library.procedures[drill.written.procedure].steps
            assert {choice["id"] for choice in choices} == set(drill.arrange)
            assert [step for step in steps if step in drill.arrange] == list(drill.arrange)
        else:
            assert {choice["id"] for choice in choices} == set(drill.answers)
            assert sum(choice["right"] for choice in choices) == 1
            assert len({choice["says"] for choice in choices}) == len(choices)
            assert all(choice["right"] or choice["why"] for choice in choices)
        assert "{" not in asked["asks"] + asked["why"]


@pytest.mark.parametrize("name", WITH_NUMBERS)
def test_both_hands_work_out_the_same(name: str, phone: Phone, edition: Edition) -> None:
    drill, linked = edition.library.drills[name], link_drills(edition.workbook)[0][name]
    chance = luck(name)
    found = phone.ask("valuesFor(drills[name], { settle, compute }, table(chance))", name=name, chance=chance)
    varied, drawn = bounds(edition.workbook, drill)
    between = [
        low + (high - low) * part
        for (low, high), part in zip((*varied.values(), *drawn.values()), chance, strict=False)
    ]
    inputs = edition.workbook.givens.inputs
    pairs = zip(varied, between, strict=False)
    changes = {key: math.floor(value + 0.5) if inputs[key].whole else value for key, value in pairs}
    settings = edition.workbook.settler.settle(edition.workbook.plan, changes)
    own = dict(zip(drawn, between[len(varied) :], strict=True))
    values = work_out(edition.workbook, linked, {**edition.workbook.compute(settings).values, **own})
    for each in (*drill.works, *drill.draws, *drill.vary):
        assert found[each] == pytest.approx(values[each], rel=1e-9)
    told = phone.ask(
        "Object.entries(drills[name].answers).filter(([, a]) => a.right || a.when?.(v)).map(([id]) => id)",
        name=name,
        v=found,
    )
    assert told == right_answers(edition.workbook, drill, linked, values)


@pytest.mark.parametrize(
    ("drawn", "measure", "system", "asked"),
    [
        (4.37, "count", "us", 4),
        (0.1234, "share", "us", 0.12),
        (0.12345, "ratio", "us", 0.12),
        (1.2345, "mass", "metric", 1.2),
        (1.2345, "mass", "us", 2.7 * 0.45359237),
    ],
)
def test_nobody_is_asked_about_digits_that_cannot_be_read(
    phone: Phone, drawn: float, measure: str, system: str, asked: float
) -> None:
    """Rounded by hand to the digits that each measure shows; one pound is 0.45359237 kg by definition."""
    found = phone.ask(
        "drillTable({ changes: () => ({}), system: () => system }, "
        "{ measures, units, measureOf: {}, digitsOf: {}, inputs: {} }, Math.random).round(drawn, 'drawn', measure)",
        drawn=drawn,
        measure=measure,
        system=system,
    )
    assert found == pytest.approx(asked, rel=1e-12)


def test_a_question_without_its_number_is_not_asked(phone: Phone) -> None:
    """A bath at 5 °C brings nothing down to 40 °F, so the plan has no ice to ask for; tubs it has."""
    plan = "{ changes: () => changes, system: () => 'us' }"
    formulas = "{ settle, compute, measures, units, measureOf, digitsOf, inputs }"
    asked = f"pose(drills[name], {formulas}, drillTable({plan}, {formulas}, luck([0.3, 0.7]))) ?? null"
    for bath, is_asked in ((1, True), (5, False)):
        changes = {"chill_water_temperature": 273.15 + bath}
        assert (phone.ask(asked, name="bags_of_ice", changes=changes) is not None) is is_asked


@pytest.mark.parametrize("name", DRILLS)
def test_the_answer_is_written_where_the_question_says(name: str, library: Library, phone: Phone) -> None:
    drill = library.drills[name]
    part = parts_of(library, drill.written)[drill.written.id]
    assert part.source
    assert phone.ask("drills[name].address", name=name) == address_of(drill.written)
    assert address_of(drill.written) == f"work/{drill.written.procedure}/#{drill.written.part}-{drill.written.id}"


def test_ice_is_asked_as_the_formulas_have_it(phone: Phone, edition: Edition) -> None:
    """With the changes that the question draws, the right answer is the ice of that day and no other."""
    low, high = 40, 120
    values = phone.ask("valuesFor(drills.ice_for_the_day, { settle, compute }, table([0]))")
    assert values["birds"] == low
    settings = edition.workbook.settler.settle(edition.workbook.plan, {"birds": low, "live_mass": 2.0})
    assert values["enough"] == pytest.approx(edition.workbook.compute(settings).values["ice_total"], rel=1e-9)
    more = phone.ask("valuesFor(drills.ice_for_the_day, { settle, compute }, table([1]))")
    assert more["birds"] == high
    assert more["enough"] > values["enough"]


@pytest.mark.parametrize("text", ["plain", "a `quoted` \\ ${price} $2", "½ \u2028 é"])
def test_a_drawing_comes_out_of_its_program_as_it_is_drawn(text: str) -> None:
    drawn = f'<svg xmlns="http://www.w3.org/2000/svg"><text x="1">{text}</text></svg>'
    read = str(MiniRacer().eval(in_backquotes(drawn)))
    assert ElementTree.fromstring(read)[0].text == text
