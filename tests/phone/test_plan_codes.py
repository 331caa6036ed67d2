"""A plan written as a code reads back the same; what is damaged, hostile or from another version is refused."""

import json
import random

import pytest

from generator.computing import Workbook
from tests.phone.conftest import Ask

WRITE = "writePlan(name, changes, known)"
READ = "readPlan(text, known)"
CHANGES = {"birds": 104, "ice_on_hand": 167.8291769, "first_kill_time": 27000, "chill_method": "running_water"}


def _random_changes(workbook: Workbook, seed: int) -> dict[str, float | str]:
    chance, givens = random.Random(seed), workbook.givens
    changes: dict[str, float | str] = {}
    for name in chance.sample(list(givens.inputs), chance.randrange(1, 40)):
        given = givens.inputs[name]
        value = chance.choice([given.low, given.high, chance.uniform(given.low, given.high)])
        changes[name] = round(value) if given.whole else value
    for name, options in givens.options.items():
        if chance.random() < 0.3:
            changes[name] = chance.choice(list(options))
    return changes


@pytest.mark.parametrize("seed", range(40))
def test_any_plan_comes_back(ask: Ask, workbook: Workbook, seed: int) -> None:
    changes = _random_changes(workbook, seed)
    text = ask(WRITE, name="Tuesday ~ été 100 %", changes=changes)
    assert text.isascii() and not set(text) & set(" #?&'\"<>")
    read = ask(READ, text=text)
    assert read["name"] == "Tuesday ~ été 100 %" and read["same"] is True
    assert read["changes"] == {
        name: value if isinstance(value, str) else pytest.approx(value, rel=1e-7) for name, value in changes.items()
    }
    assert ask(
        "Object.entries(settle(changes)).every(([id, v]) => isSame(v, settle(read)[id]))",
        changes=changes,
        read=read["changes"],
    )


def test_a_day_of_changes_is_short(ask: Ask) -> None:
    """A handful of changes with the address makes a code of 41 modules: version 6 at level L, 134 bytes."""
    assert len("https://example.org/cone-to-cooler/pass/#plan=" + ask(WRITE, name="", changes=CHANGES)) <= 134


@pytest.mark.parametrize("place", range(0, 80, 3))
def test_a_changed_letter_is_noticed(ask: Ask, place: int) -> None:
    text = ask(WRITE, name="Tuesday", changes=CHANGES)
    place %= len(text)
    for other in "a7~=":
        damaged = text[:place] + other + text[place + 1 :]
        if damaged != text:
            assert ask(READ, text=damaged)["refused"] in {"pass_damaged", "pass_none", "pass_version"}
    assert "refused" in ask(READ, text=text[: -1 - place % (len(text) - 1)])


def _sealed(ask: Ask, body: str) -> str:
    return f"1~{ask('sum(body, 6)', body=body)}~{body}"


@pytest.mark.parametrize(
    ("rows", "refused"),
    [
        ("birds:104", None),
        ("birds:100000", "pass_range"),
        ("birds:-3", "pass_range"),
        ("birds:60.5", "pass_range"),
        ("birds:1e99", "pass_range"),
        ("birds:Infinity", "pass_damaged"),
        ("birds:NaN", "pass_damaged"),
        ("birds:0x10", "pass_damaged"),
        ("birds:=broiler", "pass_range"),
        ("birds:50~birds:60", "pass_damaged"),
        ("species:=dragon", "pass_option"),
        ("species:=constructor", "pass_option"),
        ("species:5", "pass_option"),
        ("constructor:5", "pass_unknown"),
        ("tostring:=a", "pass_unknown"),
        ("__proto__:5", "pass_damaged"),
        ("line_rate:5", "pass_unknown"),
        ("zzzz5", "pass_unknown"),
        ("<script>alert(1)</script>", "pass_damaged"),
        ("", "pass_damaged"),
    ],
)
def test_takes_only_what_a_field_would_take(ask: Ask, rows: str, refused: str | None) -> None:
    assert ask(READ, text=_sealed(ask, f"abcd~x~{rows}")).get("refused") == refused


@pytest.mark.parametrize(
    "text", ["", "plan", "1", "1~", "~~~~", "1~abcdef", "javascript:alert(1)", "1~" * 5000, "%00", "\u202e1~"]
)
def test_noise_is_refused(ask: Ask, text: str) -> None:
    assert ask(READ, text=text)["refused"] in {"pass_none", "pass_damaged"}


def test_a_later_version_is_named(ask: Ask) -> None:
    assert ask(READ, text="2~anything at all")["refused"] == "pass_version"


def test_a_name_that_cannot_be_read_is_damage(ask: Ask) -> None:
    assert ask(READ, text=_sealed(ask, "abcd~%E0%A4~birds:50"))["refused"] == "pass_damaged"


def test_a_name_is_short_and_plain(ask: Ask) -> None:
    read = ask(READ, text=_sealed(ask, "abcd~" + "%0A%E2%80%AE" + "n" * 200 + "~birds:50"))
    assert read["name"] == "n" * 40


def test_another_site_is_told(ask: Ask) -> None:
    assert ask(READ, text=_sealed(ask, "abcd~x~birds:50"))["same"] is False


def test_a_file_comes_back(ask: Ask) -> None:
    text = ask("writePlanFile(name, changes, known)", name="Tuesday", changes=CHANGES)
    read = ask("readPlanFile(text, known)", text=text)
    assert read == {"name": "Tuesday", "changes": CHANGES, "same": True}


@pytest.mark.parametrize(
    ("file", "refused"),
    [
        ("", "pass_no_file"),
        ("[1]", "pass_no_file"),
        ("null", "pass_no_file"),
        ('{"plan_file": 2}', "pass_version"),
        ('{"plan_file": 1}', "pass_damaged"),
        ('{"plan_file": 1, "name": "a", "changes": {"birds": "60"}}', "pass_range"),
        ('{"plan_file": 1, "name": "a", "changes": {"birds": null}}', "pass_range"),
        ('{"plan_file": 1, "name": "a", "changes": {"__proto__": {"birds": 5}}}', "pass_unknown"),
        (json.dumps({"plan_file": 1, "name": "a", "changes": {"birds": 60}}) + " " * 90000 + "x", None),
    ],
)
def test_a_file_takes_only_what_a_field_would_take(ask: Ask, file: str, refused: str | None) -> None:
    assert ask("readPlanFile(text, known)", text=file).get("refused") == refused
