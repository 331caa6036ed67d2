"""Files that are not to be trusted: refused, or taken in part with a list; the same on both hands."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.records.taking import Taken, take_file, take_text
from tests.records.samples import DEMO, NOON, entry, file_of, sounds

Phone = Callable[..., Any]
RANGES = {"kettle": (250.0, 400.0)}


def told(taken: Taken) -> dict[str, Any]:
    faults = [{"code": fault.code, "at": fault.at, "entry": place} for place, fault in taken.faults]
    return {
        "phone": taken.phone,
        "clock": taken.clock,
        "entries": taken.entries,
        "faults": faults,
        "refused": taken.refused,
    }


def both(phone: Phone, text: str) -> Taken:
    taken = take_text(text, RANGES)
    assert phone("takeFile(text, ranges)", text=text, ranges=RANGES) == told(taken)
    return taken


WHOLE_FILES = {
    "empty": ("", "not_json"),
    "cut short": (file_of(entry(1))[:-20], "not_json"),
    "a picture": ("\x89PNG\r\n", "not_json"),
    "not a number": (file_of(entry(1)).replace("333.15", "NaN"), "not_json"),
    "a list": ("[]", "not_ours"),
    "another program's": ('{"name": "x", "entries": []}', "not_ours"),
    "newer": (file_of(entry(1), version=99), "newer"),
    "version of no kind": (file_of(entry(1), version="1"), "bad_head"),
    "no version": ('{"format": "day-record", "entries": []}', "bad_head"),
    "no entries": ('{"format": "day-record", "version": 1, "phone": "phoneaaa", "clock": 1784390400000}', "bad_head"),
    "entries are text": (file_of(entries="many"), "bad_head"),
    "unknown head": (file_of(entry(1), color="red"), "bad_head"),
    "phone of markup": (file_of(entry(1), phone="<b>"), "bad_head"),
    "too many": (file_of(*[{}] * 50_001), "too_many"),
}


@pytest.mark.parametrize(("text", "code"), WHOLE_FILES.values(), ids=WHOLE_FILES)
def test_files_refused_as_a_whole(phone: Phone, text: str, code: str) -> None:
    taken = both(phone, text)
    assert [(place, fault.code) for place, fault in taken.faults] == [(0, code)]
    assert taken.entries == []


ENTRIES = {
    "no object": ("text", "wrong_type"),
    "null": (None, "wrong_type"),
    "no identity": ({key: value for key, value in entry(1).items() if key != "id"}, "missing"),
    "identity with a line end": ({**entry(1), "id": "phoneaaa-1-abcdef\n"}, "bad_text"),
    "unknown kind": (entry(1, kind="spell"), "not_listed"),
    "unknown key": ({**entry(1), "color": "red"}, "unknown_key"),
    "key of prototypes": ({**entry(1), "__proto__": {}}, "unknown_key"),
    "reading without value": ({key: value for key, value in entry(1).items() if key != "value"}, "missing"),
    "value as text": (entry(1, value="60"), "wrong_type"),
    "truth for a value": (entry(1, value=True), "wrong_type"),
    "impossible reading": (entry(1, value=900), "impossible"),
    "number past all": (entry(1, value=1e13), "bad_number"),
    "no finite number": ("1e999", "bad_number"),
    "huge whole number": ("1" + "0" * 400, "bad_number"),
    "time before phones": (entry(1, at=0), "bad_number"),
    "time with a fraction": (entry(1, at=NOON + 0.5), "wrong_type"),
    "zone of no place": (entry(1, zone=5000), "bad_number"),
    "long remark": (entry(1, kind="remark", text="x" * 501), "too_long"),
    "very long remark": (entry(1, kind="remark", text="x" * 50_000), "too_long"),
    "empty remark": (entry(1, kind="remark", text=""), "empty"),
    "bell in a remark": (entry(1, kind="remark", text="ding\x07"), "bad_text"),
    "text turned round": (entry(1, kind="remark", text="a\u202eb"), "bad_text"),
    "half a letter": (entry(1, kind="remark", text="\ud800"), "bad_text"),
    "deep value": (entry(1, limit={"low": {"low": 1}}), "wrong_type"),
    "limit of more": (entry(1, limit={"low": 1, "lower": 0}), "unknown_key"),
    "gone without what": (entry(1, gone=True), "missing"),
    "gone but not": (entry(1, gone=False, corrects="phoneaaa-2-abcdef"), "not_listed"),
    "corrects itself": (entry(1, corrects="phoneaaa-1-abcdef"), "corrects_itself"),
    "plan with bad ids": (entry(1, kind="plan", text="1", values={"a b": 1}), "unknown_key"),
    "plan with lists": (entry(1, kind="plan", text="1", values={"a": [1]}), "wrong_type"),
    "plan of too much": (entry(1, kind="plan", text="1", values={f"a{n}": 1 for n in range(3001)}), "too_many_keys"),
}


@pytest.mark.parametrize(("bad", "code"), ENTRIES.values(), ids=ENTRIES)
def test_bad_entries_are_named_and_the_good_ones_taken(phone: Phone, bad: Any, code: str) -> None:
    text = file_of(entry(2), bad, entry(3))
    if code == "bad_number" and isinstance(bad, str):
        text = file_of(entry(2), entry(1, value=12345), entry(3)).replace("12345", bad)
    taken = both(phone, text)
    assert [(place, fault.code) for place, fault in taken.faults] == [(2, code)]
    assert taken.entries == [entry(2), entry(3)]
    assert taken.refused == 1


def test_script_in_a_remark_is_nothing_but_text(phone: Phone) -> None:
    remark = entry(1, kind="remark", text="<script>alert(1)</script> #panic() =1+1 日本語 ✓")
    assert both(phone, file_of(remark)).entries == [remark]


def test_deep_nesting_is_refused_at_once(phone: Phone) -> None:
    assert take_text("[" * 200_000, RANGES).faults[0][1].code == "not_json"
    deep = file_of(entry(1), entry(2)).replace('"kettle"', "[" * 900 + "]" * 900, 1)
    assert [fault.code for _, fault in both(phone, deep).faults] == ["wrong_type"]


def test_a_million_entries_are_refused_without_a_look_at_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "many.json"
    path.write_text(file_of(*[{}] * 1_000_000))
    looked = list[Any]()
    monkeypatch.setattr("generator.records.taking._out_of_reach", lambda entry, ranges: looked.append(entry))
    assert take_file(path, RANGES).faults == [(0, ("too_many", ""))]
    assert looked == []


def test_a_file_larger_than_any_record_is_not_even_read(tmp_path: Path) -> None:
    path = tmp_path / "large.json"
    with path.open("wb") as file:
        file.truncate(70_000_000)
    assert take_file(path, RANGES).faults == [(0, ("too_big", ""))]


def test_only_the_first_faults_are_told_and_all_are_counted(phone: Phone) -> None:
    taken = both(phone, file_of(*[{}] * 60, entry(1)))
    assert (len(taken.faults), taken.refused, len(taken.entries)) == (50, 60, 1)


def test_the_example_day_is_taken_whole(phone: Phone, book: Any) -> None:
    for path in DEMO:
        text = path.read_text("utf-8")
        taken = take_text(text, book.ranges)
        assert taken.faults == []
        assert phone("takeFile(text, ranges)", text=text, ranges=book.ranges) == told(taken)


JSON = st.recursive(
    st.none() | st.booleans() | st.floats(allow_nan=False, allow_infinity=False) | st.text(max_size=6),
    lambda inside: st.lists(inside, max_size=3) | st.dictionaries(st.text(max_size=6), inside, max_size=3),
    max_leaves=6,
)


@settings(max_examples=80, deadline=None)
@given(sounds(), st.sampled_from(["id", "at", "of", "value", "limit", "text", "corrects", "lot", "new"]), JSON)
def test_whatever_stands_in_an_entry_both_hands_say_the_same(phone: Phone, good: Any, key: str, odd: Any) -> None:
    both(phone, file_of({**good, key: odd}, good))


def test_the_schema_is_one_that_others_can_use() -> None:
    """Every keyword in it is of JSON Schema, and of those that our own checks know."""
    from generator.records.shape import record_schema

    known = {
        *("$schema", "title", "description", "type", "required", "additionalProperties", "properties", "const", "enum"),
        *("pattern", "minLength", "maxLength", "minimum", "maximum", "maxItems", "items", "$ref", "$defs", "allOf"),
        *("if", "then", "maxProperties", "propertyNames"),
    }

    def keywords(schema: Any) -> set[str]:
        inner = [*schema.get("properties", {}).values(), *schema.get("$defs", {}).values(), *schema.get("allOf", ())]
        inner += [
            schema[key] for key in ("items", "additionalProperties", "propertyNames", "if", "then") if key in schema
        ]
        return set(schema).union(*(keywords(each) for each in inner if isinstance(each, dict)))

    assert keywords(record_schema()) <= known
    assert json.loads(json.dumps(record_schema())) == record_schema()
