"""A merge is a union: any order, any repetition and any part gives the same, on both hands."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.records.entry import canonical, in_order, standing, totals
from generator.records.merging import clashes, clock_offsets, merge, set_back
from tests.records.samples import NOON, entry, sounds

Phone = Callable[..., Any]
MANY = st.lists(sounds(), max_size=8)
SOON = settings(max_examples=35, deadline=None)


@SOON
@given(MANY, MANY, MANY)
def test_order_and_repetition_change_nothing(one: Any, two: Any, three: Any) -> None:
    whole = merge(one, two, three)
    assert whole == merge(three, one, two) == merge(merge(one, two), three) == merge(one, merge(two, three))
    assert whole == merge(whole, whole) == merge(whole, one) == merge(two, whole)


@SOON
@given(MANY, st.data())
def test_nothing_is_lost_or_doubled(entries: Any, data: st.DataObject) -> None:
    parts = [data.draw(st.lists(st.sampled_from(entries))) for _ in range(3)] if entries else []
    whole = merge(entries, *parts)
    assert {canonical(each) for each in whole} == {canonical(each) for each in entries}
    assert len(whole) == len({canonical(each) for each in whole})


@SOON
@given(MANY, MANY)
def test_phone_and_computer_merge_alike(phone: Phone, one: Any, two: Any) -> None:
    whole = merge(one, two)
    assert phone("merge(one, two)", one=one, two=two) == whole
    assert phone("standing(whole)", whole=whole) == standing(whole)
    assert phone("totals(standing(whole))", whole=whole) == totals(whole)
    assert phone("clashes(whole)", whole=whole) == clashes(whole)
    assert phone("setBack(whole)", whole=whole) == set_back(whole)
    assert phone("merge(one, news(one, two))", one=one, two=two) == whole


@SOON
@given(MANY)
def test_what_the_phone_writes_the_phone_takes_again(phone: Phone, entries: Any) -> None:
    whole = merge(entries)
    desk = {"phone": "phoneaaa", "now": NOON}
    taken = phone("takeFile(toFile(desk, whole), {})", desk=desk, whole=whole)
    assert taken["entries"] == whole
    assert taken["faults"] == []


def test_one_phones_entries_keep_their_order_when_its_clock_goes_back() -> None:
    late, early = entry(1, at=NOON), entry(2, at=NOON - 3_600_000)
    assert in_order([early, late]) == [late, early]
    assert set_back([early, late]) == [early]


def test_a_correction_takes_the_place_and_both_stay() -> None:
    wrong, right = entry(1, value=400), entry(2, value=340, corrects="phoneaaa-1-abcdef")
    back = entry(3, corrects="phoneaaa-2-abcdef", gone=True)
    assert standing([wrong, right]) == [right]
    assert standing([wrong, right, back]) == []
    assert merge([wrong], [right], [back]) == [wrong, right, back]


def test_of_two_corrections_of_one_entry_the_later_counts_alone(phone: Phone) -> None:
    """Two phones corrected the same count without knowing of each other: it is one count still."""
    count = entry(1, kind="count", of="box", value=50, written="50")
    mine = entry(2, kind="count", of="box", value=48, written="48", corrects=count["id"])
    again = entry(3, kind="count", of="box", value=47, written="47", corrects=mine["id"])
    theirs = entry(1, "phonebbb", kind="count", of="box", value=46, written="46", corrects=count["id"])
    gone = entry(2, "phonebbb", at=NOON + 600_000, corrects=count["id"], gone=True)
    fast = {**theirs, "at": NOON + 600_000}
    over = entry(4, kind="count", of="box", value=45, written="45", corrects=fast["id"])
    for whole, counted in (
        ([count, mine, theirs], [mine]),
        ([count, mine, fast], [fast]),
        ([count, mine, fast, over], [over]),
        ([count, mine, again, theirs], [again]),
        ([mine, again, theirs], [again]),
        ([count, mine, again, gone], []),
    ):
        for each in (whole, whole[::-1]):
            assert standing(each) == counted  # type: ignore[arg-type]
            assert phone("standing(whole)", whole=each) == counted
    assert totals([count, mine, theirs]) == {"box": 48}


def test_corrections_in_a_ring_end(phone: Phone) -> None:
    ring = [entry(n, corrects=f"phoneaaa-{n % 3 + 1}-abcdef") for n in (1, 2, 3)]
    beside = entry(1, "phonebbb", corrects="phoneaaa-1-abcdef")
    assert standing([*ring, beside]) == phone("standing(whole)", whole=[*ring, beside]) == [beside]


def test_a_correction_reaches_only_its_own_day() -> None:
    other = entry(2, run="2026-08-01-demo2", corrects="phoneaaa-1-abcdef")
    assert standing([entry(1), other]) == [entry(1), other]


def test_entries_of_one_identity_that_differ_are_both_kept_and_named() -> None:
    assert clashes([entry(1, value=300), entry(1, value=301)]) == ["phoneaaa-1-abcdef"]


@pytest.mark.parametrize(("first", "second"), [("a", "b"), ("z", "ä"), ("😀", "ｚ")])
def test_entries_of_one_identity_have_one_order_on_both_hands(phone: Phone, first: str, second: str) -> None:
    """By the units of UTF-16, of which a sign beyond the first 65 536 takes two from D800 on (the Unicode Standard)."""
    placed = [entry(1, kind="remark", text=text) for text in (first, second)]
    assert phone("canonical(one)", one=placed[0]) == canonical(placed[0])
    assert in_order([placed[0], *placed]) == [placed[0], *placed]
    for mixed in (placed, placed[::-1]):
        assert in_order(mixed) == placed
        assert phone("inOrder(mixed)", mixed=mixed) == placed


def met(phone: str, other: str, at: int, sent: int) -> Any:
    return {**entry(1, phone, kind="merge", sent=sent, taken=1, at=at), "phone": other}


A_MINUTE_MORE = 61_000


def test_clocks_are_told_apart_where_each_took_in_the_other(phone: Phone) -> None:
    """The second clock is 120 s ahead and each file was 20 s on the way: (140 + 100) / 2 seconds."""
    meetings = [
        met("phoneaaa", "phonebbb", at=NOON + 20_000, sent=NOON + 120_000),
        met("phonebbb", "phoneaaa", at=NOON + 140_000, sent=NOON),
    ]
    assert clock_offsets(meetings) == [("phoneaaa", "phonebbb", 120.0, True)]
    told = phone("clockOffsets(all)", all=meetings)
    assert told == [{"phone": "phoneaaa", "other": "phonebbb", "seconds": 120, "sure": True}]


def test_the_clock_that_is_behind_is_told_so(phone: Phone) -> None:
    """The second clock is 120 s behind and each file was 20 s on the way: (-100 - 140) / 2 seconds."""
    meetings = [
        met("phoneaaa", "phonebbb", at=NOON + 140_000, sent=NOON),
        met("phonebbb", "phoneaaa", at=NOON + 20_000, sent=NOON + 120_000),
    ]
    assert clock_offsets(meetings) == [("phoneaaa", "phonebbb", -120.0, True)]
    told = phone("clockOffsets(all)", all=meetings)
    assert told == [{"phone": "phoneaaa", "other": "phonebbb", "seconds": -120, "sure": True}]


def test_one_file_tells_only_that_it_cannot_arrive_before_it_was_sent(phone: Phone) -> None:
    ahead = met("phoneaaa", "phonebbb", at=NOON, sent=NOON + A_MINUTE_MORE)
    assert clock_offsets([ahead]) == [("phoneaaa", "phonebbb", 61.0, False)]
    assert clock_offsets([met("phoneaaa", "phonebbb", at=NOON + A_MINUTE_MORE, sent=NOON)]) == []
    assert phone("aheadBy(sent, now)", sent=NOON + A_MINUTE_MORE, now=NOON) == 61
    assert phone("aheadBy(sent, now)", sent=NOON + 60_000, now=NOON) == 0


def test_a_clock_is_told_apart_whichever_phone_took_the_other_in(phone: Phone) -> None:
    """Of several meetings the one with the shortest way counts: of 200 s and 90 s ahead only 200 s can be sure."""
    meetings = [met("phonebbb", "phoneaaa", at=NOON, sent=NOON + seconds * 1000) for seconds in (90, 200, 150)]
    assert clock_offsets(meetings) == [("phonebbb", "phoneaaa", 200.0, False)]
    told = phone("clockOffsets(all)", all=meetings)
    assert told == [{"phone": "phonebbb", "other": "phoneaaa", "seconds": 200, "sure": False}]


@pytest.mark.parametrize(("milliseconds", "told"), [(60_000, 0), (60_001, 1)])
def test_a_minute_is_no_difference_and_more_is(milliseconds: int, told: int, phone: Phone) -> None:
    meetings = [met("phoneaaa", "phonebbb", at=NOON, sent=NOON + milliseconds)]
    back = [entry(1, at=NOON), entry(2, at=NOON - milliseconds), entry(3, at=NOON - milliseconds)]
    assert len(clock_offsets(meetings)) == told
    assert len(phone("clockOffsets(all)", all=meetings)) == told
    assert set_back(back) == back[1:] * told
    assert len(phone("setBack(all)", all=back)) == 2 * told


def test_keys_on_the_phone_differ_only_where_entries_do(phone: Phone) -> None:
    turned = dict(reversed(entry(1).items()))
    assert phone("keyOf(one) === keyOf(other)", one=entry(1), other=turned)
    assert not phone("keyOf(one) === keyOf(other)", one=entry(1), other=entry(1, value=300))


def test_a_new_entry_carries_what_the_desk_knows(phone: Phone) -> None:
    desk = {"phone": "phoneaaa", "counter": 7, "run": "2026-07-18-demo1", "who": "", "now": NOON, "zone": -240}
    made = phone('makeEntry({ ...desk, random: () => "abcdef" }, { kind: "remark", text: "wet" })', desk=desk)
    whole = {"id": "phoneaaa-7-abcdef", "run": "2026-07-18-demo1", "kind": "remark", "text": "wet"}
    assert made == {**whole, "at": NOON, "zone": -240}
