"""Who is signed off: the last signature counts, one taken back does not, and one may run out."""

from __future__ import annotations

from typing import Any

from tests.teaching.conftest import Phone

DAY = 86_400
SKILLS = {
    "blade": {"title": "Blade", "places": ["table"], "lasts": 10 * DAY},
    "flame": {"title": "Flame", "places": ["table", "fire"], "lasts": 0},
}
BEGIN = 1_700_000_000_000


def entry(counter: int, days: float, **fields: object) -> dict[str, Any]:
    name = {"id": f"aaaaaa-{counter}-bbbb", "run": "2023-11-14-training", "kind": "sign", "zone": 0}
    return {**name, "at": int(BEGIN + days * DAY * 1000), **fields}


def lacking(phone: Phone, entries: list[dict[str, Any]], person: str, place: str, days: float) -> list[str]:
    now = BEGIN + days * DAY * 1000
    found: list[str] = phone.ask(
        "lacking(signatures(entries, skills), skills, person, place, now)",
        entries=entries, skills=SKILLS, person=person, place=place, now=now,
    )  # fmt: skip
    return found


def test_unsigned_people_lack_what_the_place_asks_for(phone: Phone) -> None:
    signed = [entry(1, 0, of="blade", name="Ben", who="Ana")]
    assert lacking(phone, signed, "Ben", "table", 1) == ["flame"]
    assert lacking(phone, signed, " ben ", "table", 1) == ["flame"]
    assert lacking(phone, signed, "Cleo", "table", 1) == ["blade", "flame"]
    assert lacking(phone, signed, "Cleo", "elsewhere", 1) == []


def test_a_signature_runs_out_when_the_farm_says_so_and_can_be_given_again(phone: Phone) -> None:
    signed = [entry(1, 0, of="blade", name="Ben", who="Ana"), entry(2, 0, of="flame", name="Ben", who="Ana")]
    assert lacking(phone, signed, "Ben", "table", 9.9) == []
    assert lacking(phone, signed, "Ben", "table", 10.1) == ["blade"]
    assert lacking(phone, [*signed, entry(3, 10, of="blade", name="Ben", who="Ana")], "Ben", "table", 10.1) == []


def test_one_taken_back_does_not_count_nor_one_by_nobody(phone: Phone) -> None:
    signed = entry(1, 0, of="flame", name="Ben", who="Ana")
    back = entry(2, 1, of="flame", name="Ben", who="Ana", corrects=signed["id"], gone=True)
    assert lacking(phone, [signed], "Ben", "fire", 2) == []
    assert lacking(phone, [signed, back], "Ben", "fire", 2) == ["flame"]
    assert lacking(phone, [entry(1, 0, of="flame", name="Ben")], "Ben", "fire", 2) == ["flame"]
    assert lacking(phone, [entry(1, 0, of="constructor", name="Ben", who="Ana")], "Ben", "fire", 2) == ["flame"]
    assert lacking(phone, [entry(1, 0, who="Ana", text="Day closed")], "Ben", "fire", 2) == ["flame"]
