"""What a plan, its options and changes to it come to, by Python and by the shipped JavaScript."""

from __future__ import annotations

import pytest

from generator.computing import Workbook
from generator.problems import ProblemsFound
from tests.formula.phone_machine import HANDS, Hand, settle

by_both = pytest.mark.parametrize("hand", HANDS)


def test_layers_and_where_each_value_comes_from(bakery: Workbook) -> None:
    plan = {"loaves": "40 loaf", "flour_kind": "wholemeal"}
    settings = bakery.settle(plan, {"oven_temperature": "250 °C"})
    assert settings["loaves"] == 40
    assert settings["water_share"] == pytest.approx(0.80)
    assert settings["oven_temperature"] == pytest.approx(523.15)
    assert settings["bake_time"] == 38 * 60
    assert settings["salt_share"] == pytest.approx(0.02)
    wanted = ("loaves", "flour_kind", "water_share", "oven_temperature", "bake_time", "salt_share")
    assert [settings.origins[name] for name in wanted] == ["plan", "plan", "option", "change", "default", "constant"]


def test_the_plan_beats_an_option(bakery: Workbook) -> None:
    settings = bakery.settle({"flour_kind": "wholemeal", "water_share": "70%"}, {})
    assert settings["water_share"] == pytest.approx(0.70)


def test_another_option_beats_what_the_plan_said_for_the_old_one(bakery: Workbook) -> None:
    settings = bakery.settle({"flour_kind": "white", "water_share": "70%"}, {"flour_kind": "wholemeal"})
    assert settings["water_share"] == pytest.approx(0.80)
    settings = bakery.settle({"flour_kind": "wholemeal", "water_share": "70%"}, {"flour_kind": "white"})
    assert settings["water_share"] == pytest.approx(0.68)
    same = bakery.settle({"flour_kind": "white", "water_share": "70%"}, {"flour_kind": "white"})
    assert same["water_share"] == pytest.approx(0.70)


def test_a_change_beats_everything(bakery: Workbook) -> None:
    settings = bakery.settle({"water_share": "70%"}, {"flour_kind": "wholemeal", "water_share": "75%"})
    assert settings["water_share"] == pytest.approx(0.75)


@by_both
@pytest.mark.parametrize(
    ("changes", "water_share"),
    [
        ({}, 0.80),
        ({"flour_kind": "white"}, 0.68),
        ({"water_share": 0.9}, 0.9),
        ({"flour_kind": "white", "water_share": 0.9}, 0.9),
    ],
)
def test_changes_to_the_farms_own_plan(
    hand: Hand, bakery: Workbook, changes: dict[str, float | str], water_share: float
) -> None:
    settings = settle(bakery, changes, hand)
    assert settings["water_share"] == pytest.approx(water_share)
    assert settings["loaves"] == 40


def test_both_hands_settle_alike(bakery: Workbook) -> None:
    for changes in ({}, {"flour_kind": "white"}, {"loaves": 400.0, "oven_places": 1.0}):
        assert settle(bakery, changes, "python") == settle(bakery, changes, "phone")


def test_every_bad_value_is_told_at_once(bakery: Workbook) -> None:
    changes = {
        "loavs": "3",
        "loaves": "500 loaf",
        "oven_places": "2.5",
        "oven_temperature": "250 kg",
        "bake_time": "35",
        "flour_kind": "wholemel",
        "flour_mass": "3 kg",
        "salt_share": "2%",
        "start_time": "25:00",
        "room_temperature": "100 °F",
    }
    with pytest.raises(ProblemsFound) as found:
        bakery.settle({}, changes)
    assert str(found.value) == "\n".join(
        [
            "--set bake_time: `35` has no unit",
            "    hint: write for example `90 s`, `15 min` or `2 h`",
            "--set flour_kind: `wholemel` is no option of `flour_kind`",
            "    hint: did you mean `wholemeal`?",
            "--set flour_mass: `flour_mass` is computed, not an input",
            "    hint: set what it depends on",
            "--set loaves: `loaves` is 500 loaves, out of its range",
            "    hint: from 1 loaf to 400 loaves",
            "--set loavs: unknown input `loavs`",
            "    hint: did you mean `loaves`?",
            "--set oven_places: `oven_places` counts things, and 2.5 is not a whole number",
            "    hint: write a whole number",
            "--set oven_temperature: `kg` does not fit “Temperature”",
            "    hint: write it in `degF` or `degC`",
            "--set salt_share: `salt_share` is a constant, not an input",
            "    hint: a farm gives its own `value` in its overlay",
            "--set start_time: `25:00` is not a time of day",
            "    hint: write for example `7:30` or `19:30`",
        ]
    )


def test_the_ends_of_a_range_are_in_it(bakery: Workbook) -> None:
    settings = bakery.settle({}, {"loaf_mass": "2000 g", "dough_temperature": "64.4 °F", "loaves": "1"})
    assert settings["loaf_mass"] == 2
    with pytest.raises(
        ProblemsFound, match=r"`dough_temperature` is 64 °F|`dough_temperature` is 18 °C \(64 °F\), out of its range"
    ):
        bakery.settle({}, {"dough_temperature": "64.3 °F"})
