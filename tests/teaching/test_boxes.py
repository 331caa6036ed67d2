"""The schedule: wrong ones come back soon, right ones later and later."""

from __future__ import annotations

from tests.teaching.conftest import Phone

MINUTE, DAY = 60_000, 86_400_000


def test_each_right_answer_waits_longer_and_a_wrong_one_starts_again(phone: Phone) -> None:
    card, now, waits = None, 1_000, []
    for _ in range(7):
        card = phone.ask("answered(card ?? undefined, true, now)", card=card, now=now)
        waits.append(card["due"] - now)
        now = card["due"]
    assert waits == [20 * MINUTE, DAY, 3 * DAY, 7 * DAY, 21 * DAY, 21 * DAY, 21 * DAY]
    wrong = phone.ask("answered(card, false, now)", card=card, now=now)
    assert wrong == {"box": 0, "due": now + 2 * MINUTE, "right": 7, "wrong": 1}


def test_what_is_due_longest_comes_first_then_what_is_new(phone: Phone) -> None:
    cards = {"a": {"box": 1, "due": 500}, "b": {"box": 0, "due": 200}, "c": {"box": 2, "due": 9_000}}
    pick = "next(deck, (id) => cards[id], now, last) ?? null"
    assert phone.ask(pick, deck=["a", "b", "c", "new"], cards=cards, now=1_000, last="") == "b"
    assert phone.ask(pick, deck=["a", "b", "c", "new"], cards=cards, now=1_000, last="b") == "a"
    assert phone.ask(pick, deck=["c", "new"], cards=cards, now=1_000, last="") == "new"
    assert phone.ask(pick, deck=["c"], cards=cards, now=1_000, last="") is None
    assert phone.ask(pick, deck=["b"], cards=cards, now=1_000, last="b") == "b"


def test_known_are_those_that_were_right_last_time(phone: Phone) -> None:
    cards = {"a": {"box": 1}, "b": {"box": 0}, "c": {"box": 5}}
    assert phone.ask("known(['a', 'b', 'c', 'd'], (id) => cards[id])", cards=cards) == 2
