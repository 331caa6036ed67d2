"""The parts of the log that need no page: the index, what is offered for one tap, names of timers, what is foretold."""

from __future__ import annotations

import json
import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.records.entry import in_order, standing
from generator.records.judging import verdict_of
from generator.records.merging import set_back
from generator.records.record_file import record_text
from generator.records.table import to_table
from generator.records.taking import take_text
from tests.phone.conftest import Ask, machine
from tests.records.samples import NOON, entry
from tests.repeating import TIMES

MODULES = (
    "records.js",
    "merge.js",
    "judging.js",
    "record_table.js",
    "curve.js",
    "log_index.js",
    "reading_items.js",
    "neat_steps.js",
    "ranges.js",
    "timer_names.js",
    "foretelling.js",
    "unended.js",
)
MINUTE = 60_000


@pytest.fixture(scope="module")
def log() -> Ask:
    return machine(*MODULES)


@st.composite
def days(draw: st.DrawFn, clocks_jump: bool = True) -> list[Any]:
    """Entries of two phones whose clocks jump, some taken back or corrected, as they come to one phone."""
    made: list[Any] = []
    for number in range(draw(st.integers(0, 12))):
        phone = draw(st.sampled_from(["phoneaaa", "phonebbb"]))
        fields: dict[str, Any] = draw(
            st.sampled_from(
                [
                    {"kind": "reading", "of": "kettle", "value": 80, "written": "80"},
                    {"kind": "count", "of": "cups", "value": 2, "written": "2", "lot": "1"},
                    {"kind": "tick", "of": "list", "step": "one"},
                    {"kind": "tick", "of": "list", "step": "one", "lot": "Load 2"},
                    {"kind": "remark", "text": "so"},
                ]
            )
        )
        if made and draw(st.booleans()):
            fields = {**fields, "corrects": draw(st.sampled_from(made))["id"]}
            fields |= {"gone": True} if draw(st.booleans()) else {}
        minute = draw(st.integers(-5, 5)) if clocks_jump else number
        if draw(st.booleans()):
            fields = {**fields, "made": NOON + (minute + draw(st.integers(0, 9))) * MINUTE}
        made.append(entry(number + 1, phone, at=NOON + minute * MINUTE, **fields))
    return draw(st.permutations(made))


ADDED = "const index = makeIndex(); for (const each of came) index.add(each);"


@settings(max_examples=50 * TIMES, deadline=None)
@given(days())
def test_the_index_knows_what_a_walk_through_all_entries_finds(log: Ask, came: list[Any]) -> None:
    counting = standing(came)
    shown = log(f"(() => {{ {ADDED} return index.standing(); }})()", came=came)
    assert shown == counting
    asked_each_time = "const index = makeIndex(); for (const each of came) { index.add(each); index.standing(); }"
    assert log(f"(() => {{ {asked_each_time} return index.standing(); }})()", came=came) == counting
    for lot in ("", "Load 2"):
        ticked = {each["step"] for each in counting if each["kind"] == "tick" and each.get("lot", "") == lot}
        found = log(f"(() => {{ {ADDED} return [...index.ticksOf('list', lot).keys()]; }})()", came=came, lot=lot)
        assert set(found) == ticked
    kettles = [each for each in counting if each.get("of") == "kettle"]
    last = log(f"(() => {{ {ADDED} return index.last('kettle') ?? null; }})()", came=came)
    assert last == (kettles[-1] if kettles else None)


def test_a_correction_stands_at_the_time_of_what_it_corrects(log: Ask) -> None:
    """Read at 9:50 of a chill that may last until 10:00, mistyped, and corrected at 10:10: it was in time."""
    limit = {"high": 277.6, "by": NOON}
    wrong = entry(1, at=NOON - 10 * MINUTE, of="heart", value=307, written="93 °F", limit=limit)
    between = entry(2, at=NOON + 5 * MINUTE, of="heart", value=276, written="37 °F", limit=limit)
    desk = {"phone": "phoneaaa", "counter": 3, "run": wrong["run"], "now": NOON + 10 * MINUTE, "zone": -240}
    fields = {"kind": "reading", "of": "heart", "value": 277, "written": "39 °F", "limit": limit}
    given = "{ ...fields, corrects: wrong.id, at: wrong.at, zone: wrong.zone }"
    right = log(f"makeEntry({{ ...desk, random: () => 'abcdef' }}, {given})", desk=desk, fields=fields, wrong=wrong)
    assert (right["at"], right["made"]) == (NOON - 10 * MINUTE, NOON + 10 * MINUTE)
    counting = standing([wrong, between, right])
    assert [each["written"] for each in counting] == ["39 °F", "37 °F"]
    assert [verdict_of(each) for each in counting] == ["inside", "inside"]
    came = [wrong, between, right]
    assert log(f"(() => {{ {ADDED} return index.standing(); }})()", came=came) == counting
    assert log("judge(right.value, right.limit, right.at)", right=right) == "inside"
    assert set_back(came) == log("setBack(came)", came=came) == []
    table = to_table(came)
    assert table == log("toTable(came)", came=came)
    assert "2026-07-18 11:50:00,2026-07-18 12:10:00," in table
    assert log("JSON.parse(toFile({ phone: 'phoneaaa', now: 1 }, came)).version", came=came) == 2
    assert log("JSON.parse(toFile({ phone: 'phoneaaa', now: 1 }, came)).version", came=[wrong]) == 1
    for text in (record_text(came, NOON), record_text([wrong], NOON)):
        assert take_text(text, {}).faults == []
    assert json.loads(record_text(came, NOON))["version"] == 2


LOOKS = """((many) => {
  let looks = 0;
  const watched = (entry) => new Proxy(entry, { get: (of, field) => { looks += 1; return of[field]; } });
  const kinds = [
    { kind: 'tick', of: 'list', step: 'one' }, { kind: 'reading', of: 'kettle', value: 80 },
    { kind: 'count', of: 'cups', value: 2, lot: '1' }, { kind: 'remark', text: 'so' },
  ];
  const make = (number, fields) => watched({ id: `phoneaaa-${number}-abc`, run: 'r', at: number, ...fields });
  const index = makeIndex();
  index.add(make(0, { kind: 'plan', values: {} }));
  for (let number = 1; number <= many; number += 1) {
    index.add(make(number, { ...kinds[number % 4], lot: `${number % 8}` }));
  }
  looks = 0;
  index.add(make(many + 1, { kind: 'tick', of: 'list', step: 'two' }));
  index.add(make(many + 2, { kind: 'reading', of: 'kettle', value: 81 }));
  const back = { kind: 'tick', of: 'list', step: 'two', corrects: `phoneaaa-${many + 1}-abc`, gone: true };
  index.add(make(many + 3, back));
  [index.standing().find(({ kind }) => kind === 'plan'), index.ticks('list', '', 'two')];
  [index.ticksOf('list'), index.printsOf('list'), index.last('kettle'), index.ends()];
  return looks;
})(many)"""


def test_an_entry_costs_the_same_after_five_thousand_others(log: Ask) -> None:
    """Counted by how often fields of entries are looked at when one is added, taken back, and asked for."""
    few, many = log(LOOKS, many=80), log(LOOKS, many=5000)
    assert few > 0
    assert many == few


@settings(max_examples=30 * TIMES, deadline=None)
@given(days(clocks_jump=False))
def test_ends_are_all_that_rhythms_ask_for(log: Ask, came: list[Any]) -> None:
    often = {"title": "Often", "rhythm": "often"}
    items = {"kettle": often, "cups": {**often, "per_lot": True}}
    due = "due(items, { often: 600 }, all)"
    few = log(f"(() => {{ {ADDED} const all = index.ends(); return {due}; }})()", came=came, items=items)
    assert few == log(f"(() => {{ const all = came; return {due}; }})()", came=in_order(came), items=items)


@pytest.mark.parametrize(
    ("about", "values"),
    [
        ({"last": 143, "step": 1, "range": [23, 212], "counts": False}, [141, 142, 143, 144, 145]),
        ({"low": 140, "high": 150, "step": 1, "range": [23, 212], "counts": False}, [143, 144, 145, 146, 147]),
        ({"last": 33.3, "step": 0.5, "range": [-22, 140], "counts": False}, [32.5, 33, 33.5, 34, 34.5]),
        ({"high": 212, "step": 1, "range": [23, 212], "counts": False}, [210, 211, 212]),
        ({"step": 1, "range": [0, 6], "counts": True}, [1, 2, 5]),
        ({"step": 1, "range": [0, 6], "counts": False}, []),
    ],
)
def test_round_values_about_the_last_are_offered(log: Ask, about: Any, values: list[float]) -> None:
    assert log("offered(about)", about=about) == values


@pytest.mark.parametrize(
    ("keys", "typed"),
    [
        ("170", "170"),
        ("0.5", "0.5"),
        ("1..5", "1.5"),
        ("34-", "-34"),
        ("3-4-", "34"),
        ("007", "7"),
        ("1234567890", "123456789"),
    ],
)
def test_the_keypad(log: Ask, keys: str, typed: str) -> None:
    assert log("keys.reduce(press, '')", keys=list(keys)) == typed
    assert log("press('12', 'back')") == "1"


@pytest.mark.parametrize(
    ("size", "round_one"),
    [(1 / 2.20462, 0.5), (1.8, 2), (25.4, 20), (3.78541, 5), (0.3048, 0.2), (0.1, 0.1), (0.95, 1)],
)
def test_a_step_in_other_units_is_one_two_or_five_and_noughts(log: Ask, size: float, round_one: float) -> None:
    assert log("neat(size)", size=size) == round_one


def test_a_last_digit_is_left_to_changes_of_unit(log: Ask) -> None:
    boiling = (212 - 32) / 1.8 + 273.15
    assert log("liesWithin(value, [0, high])", value=boiling + 1e-10, high=boiling)
    assert not log("liesWithin(value, [0, high])", value=boiling + 0.001, high=boiling)
    assert not log("liesWithin(-1e-3, [0, high])", high=boiling)


def test_timers_of_one_name_are_numbered(log: Ask) -> None:
    assert log("freeName('Row', [])") == "Row"
    assert log("freeName('Row', ['Row'])") == "Row · 2"
    assert log("freeName('Row', ['Row', 'Row · 3'])") == "Row · 2"
    assert log("freeName('Row', ['Row', 'Row · 2', 'Other'])") == "Row · 3"


def cooling(minutes: list[float], rate: float, **limit: float) -> list[Any]:
    """Readings from 40 to 0 degrees above nothing, by Newton's law of cooling."""
    values = [(round(at * MINUTE), 40 * math.exp(-rate * at)) for at in minutes]
    return [
        entry(number, at=NOON + at, of="heart", value=value, written="x", limit=limit)
        for number, (at, value) in enumerate(values, 1)
    ]


def test_newtons_cooling_is_foretold(log: Ask) -> None:
    # 40 exp(-t/60) comes to 4 at t = 60 ln 10 = 138.155 minutes.
    told = log("foretell(all, 0)", all=cooling([0, 20, 40, 60], 1 / 60, high=4, by=NOON + 240 * MINUTE))
    assert told["kind"] == "in_time"
    assert told["at"] == pytest.approx(NOON + 138.155 * MINUTE, abs=MINUTE)
    late = log("foretell(all, 0)", all=cooling([0, 20, 40, 60], 1 / 60, high=4, by=NOON + 120 * MINUTE))
    assert late["kind"] == "late"


SLOW = {"heart": {"curve": {"toward": "bath", "otherwise": "tap"}, "too_slow": {"act": "Ice.", "actions": {}}}}


def too_slow(log: Ask, *entries: Any) -> dict[str, str]:
    """The readings that will not be there in time, by name, with what is foretold; the water at 0."""
    ask = "[...tooSlow(items, all, { tap: 0 })].map(([id, { kind }]) => [all.find((one) => one.id === id).name, kind])"
    return dict(log(ask, items=SLOW, all=in_order([*entries])))


def test_what_will_not_be_there_in_time_is_told_until_a_later_reading_is(log: Ask) -> None:
    # 40 exp(-t/60) comes to 4 after 138 minutes: too late where 120 are allowed, in time where 180 are.
    first = cooling([0, 20, 40], 1 / 60, high=4, by=NOON + 120 * MINUTE)
    one = [{**each, "name": "1"} for each in first]
    assert too_slow(log, *one[:1]) == {}
    assert too_slow(log, *one) == {"1": "late"}
    # 40 exp(-t/20) comes to 4 after 46 minutes, so a second bird does not silence the first.
    second = [{**each, "name": "2", "id": f"other{each['id']}"} for each in cooling([0, 20], 1 / 20, high=4, by=NOON)]
    in_time = [{**each, "limit": {"high": 4, "by": NOON + 120 * MINUTE}} for each in second]
    assert too_slow(log, *one, *in_time) == {"1": "late"}
    limit = {"high": 4, "by": NOON + 120 * MINUTE}
    still = entry(9, at=NOON + 50 * MINUTE, of="heart", name="2", value=41, limit=limit)
    assert too_slow(log, *in_time[:1], still) == {"2": "never"}
    # Iced at 40 minutes, it reads 8 at 60: 0.0268 1/min since 20.5, or 4 at 86 minutes.
    better = entry(10, at=NOON + 60 * MINUTE, of="heart", name="1", value=8, limit=limit)
    assert too_slow(log, *one, better) == {}


def test_what_is_outside_already_is_not_told_as_slow(log: Ask) -> None:
    assert too_slow(log, *cooling([0, 20, 40], 1 / 60, high=4, by=NOON + 30 * MINUTE)) == {}


def test_a_bird_nears_the_bath_that_it_is_named_after(log: Ask) -> None:
    baths = [entry(20 + n, of="bath", name=name, value=value) for n, (name, value) in enumerate([("1", 1), ("10", 9)])]
    ask = "seriesOf('heart', { toward: 'bath', otherwise: 'tap' }, all, { tap: 0 }).map(({ toward }) => toward)"
    for name, toward in (("1", 1), ("1 big", 1), ("10 big", 9), ("3", 9)):
        assert log(ask, all=[*baths, entry(1, of="heart", name=name, value=20)]) == [toward]
    assert log(ask, all=[entry(1, of="heart", name="1", value=20)]) == [0]


def test_what_cannot_be_foretold_is_said(log: Ask) -> None:
    assert log("foretell(all, 0)", all=cooling([0], 1 / 60, high=4))["kind"] == "more"
    assert log("foretell(all, 0)", all=cooling([0, 30], 0, high=4))["kind"] == "never"
    assert log("foretell(all, 0)", all=cooling([0, 240], 1 / 60, high=4))["kind"] == "there"
    assert log("foretell(all, 0)", all=cooling([0, 30], 1 / 60)) is None


BATCH: dict[str, Any] = {"since": "put_in", "until": ["all_out", "taken_out"], "per_lot": True}
BATCHES = {"bath": BATCH, "core": BATCH, "side": BATCH, "kettle": {"since": "put_in", "until": ["all_out"]}}


@pytest.mark.parametrize(
    ("later", "lacks"),
    [
        ([], ["a"]),
        ([("all_out", None)], []),
        ([("taken_out", None)], []),
        ([("bath", "1"), ("bath", "2"), ("taken_out", "1")], ["a"]),
        ([("bath", "1"), ("bath", "2"), ("taken_out", "1"), ("taken_out", "2")], []),
        ([("bath", "1"), ("core", "1 big"), ("core", "2 big"), ("taken_out", "1")], ["a"]),  # 2 was never taken out
        ([("bath", "1"), ("core", "1 big"), ("side", None), ("taken_out", "1")], []),
        ([("bath", "1"), ("taken_out", "1"), ("bath", "1")], ["a"]),  # filled anew
    ],
)
def test_a_lot_is_ended_whole_or_name_by_name(log: Ask, later: list[tuple[str, str | None]], lacks: list[str]) -> None:
    put_in = [entry(n, kind="mark", of="put_in", lot=lot) for n, lot in enumerate("ab")]
    marks = [entry(9, kind="mark", of="all_out", lot="b")]
    for number, (of, name) in enumerate(later, 2):
        marks.append(entry(number, kind="mark", of=of, lot="a", **({"name": name} if name else {})))
    found = log("unended(items, entries)", items=BATCHES, entries=put_in + marks)
    assert found == [{"of": "all_out", "lot": lot} for lot in lacks]
