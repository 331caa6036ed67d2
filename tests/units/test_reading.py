"""Value texts into SI. Sizes of units are typed from their definitions: NIST SP 811 (2008), appendix B.8."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.units import UnitFault, show
from tests.units.shop import BOOK, MEASURES


@pytest.mark.parametrize(
    ("text", "measure", "expected"),
    [
        ("2.6 kg", "mass", 2.6),
        ("1 lb", "mass", 0.45359237),
        ("2 lbs", "mass", 2 * 0.45359237),
        ("1 oz", "mass", 0.028349523125),
        ("3 lb 4 oz", "mass", 3 * 0.45359237 + 4 * 0.028349523125),
        ("2.6 kg/loaf", "loaf_mass", 2.6),
        ("6,5 kg", "mass", 6.5),
        ("0,125 kg", "mass", 0.125),
        (",5 kg", "mass", 0.5),
        (".5kg", "mass", 0.5),
        ("1 250 kg", "mass", 1250),
        ("40\u00a0000\u202f000 Btu/h", "power", 40e6 * 1055.056 / 3600),
        ("1e3 kg", "mass", 1000),
        ("−4 kg", "mass", -4),
        ("-4 kg", "mass", -4),
        ("+4 kg", "mass", 4),
        ("32 degF", "temperature", 273.15),
        ("212 °F", "temperature", 373.15),
        ("212F", "temperature", 373.15),
        ("−40 degC", "temperature", 233.15),
        ("300 K", "temperature", 300),
        ("9 delta_degF", "warming", 5),
        ("9 °F", "warming", 5),
        ("74 percent", "share", 0.74),
        ("74%", "share", 0.74),
        ("0.74", "share", 0.74),
        ("120", "loaves", 120),
        ("1 loaf", "loaves", 1),
        ("120 loaves", "loaves", 120),
        ("7:30", "clock", 27000),
        ("0:00", "clock", 0),
        ("24:00", "clock", 86400),
        ("7:30 pm", "clock", 70200),
        ("7 am", "clock", 25200),
        ("6pm", "clock", 64800),
        ("12 p.m.", "clock", 43200),
        ("12:30 A.M.", "clock", 1800),
        ("6 am the day before", "clock", -64800),
        ("12:15 AM", "clock", 900),
        ("7.5 h", "clock", 27000),
        ("20:00 the day before", "clock", -14400),
        ("0:30 next day", "clock", 88200),
        ("90 s", "duration", 90),
        ("2.5 min", "duration", 150),
        ("1 h 30 min", "duration", 5400),
        ("$4.50", "money", 4.5),
        ("−$4.50", "money", -4.5),
        ("$1/lb", "price", 1 / 0.45359237),
        ("1 gal", "volume", 231 * 0.0254**3),
        ("1 psi", "pressure", 4.4482216152605 / 0.0254**2),
    ],
)
def test_a_text_becomes_si(text: str, measure: str, expected: float) -> None:
    assert BOOK.read(text, MEASURES[measure]) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(("text", "expected"), [("1 degF", 5 / 9), ("1 °C", 1), ("2 K", 2), ("9 delta_degF", 5)])
def test_a_step_of_temperature_is_a_difference(text: str, expected: float) -> None:
    assert BOOK.read(text, MEASURES["temperature"], difference=True) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "measure", "fault", "hint"),
    [
        ("", "mass", "the value is empty", "write for example `12 kg`"),
        ("heavy", "mass", "`heavy` is not a number with a unit", "write for example `12 kg`"),
        ("NaN kg", "mass", "`NaN kg` is not a number with a unit", "write for example `12 kg`"),
        ("2.6", "mass", "`2.6` has no unit", "write for example `12 kg`"),
        ("90", "duration", "`90` has no unit", "write for example `90 s`, `15 min` or `2 h`"),
        ("3 kgg", "mass", "unknown unit `kgg`", "did you mean `kg`?"),
        ("3 pund", "mass", "unknown unit `pund`", "did you mean `pounds`?"),
        ("13 pm", "clock", "`13 pm` is not a time of day", "write for example `7:30` or `19:30`"),
        ("7", "clock", "`7` has no unit", "write for example `7:30`"),
        ("3 km/h", "mass", "unknown unit `km/h`", "write for example `12 kg`"),
        ("1:30", "duration", "`1:30` can be read in two ways", "write `1 h 30 min` or `1 min 30 s`"),
        ("9 delta_degF", "temperature", "`delta_degF` does not fit “Temperature”", "write it in `degF` or `degC`"),
        ("3 degF", "mass", "`degF` does not fit “Weight”", "write it in `lb` or `kg`"),
        ("3 kg/loaf", "mass", "`kg/loaf` does not fit “Weight”", "write it in `lb` or `kg`"),
        ("3 lb", "loaf_mass", "`lb` does not fit “Weight of one loaf”", "write it in `oz/loaf` or `kg/loaf`"),
        (
            "3 degC",
            "warming",
            "`degC` does not fit “Difference of temperature”",
            "write it in `delta_degF` or `delta_degC`",
        ),
        ("25:00", "clock", "`25:00` is not a time of day", "write for example `7:30` or `19:30`"),
        ("7:75", "clock", "`7:75` is not a time of day", "write for example `7:30` or `19:30`"),
        ("13:00 pm", "clock", "`13:00 pm` is not a time of day", "write for example `7:30` or `19:30`"),
        ("noon", "clock", "`noon` is not a number with a unit", "write for example `7:30`"),
        ("40 5", "count", "`40 5` is not one value", "write for example `12`"),
        ("5 degC 3 degC", "temperature", "`5 degC 3 degC` is not one value", "write for example `12 degC`"),
        ("1,250.5 kg", "mass", "`1,250.5` can be read in two ways", "write no mark between thousands"),
        ("1,250,000 kg", "mass", "`1,250,000` can be read in two ways", "write `1250000`"),
        (
            "1,250 kg",
            "mass",
            "`1,250` can be read in two ways",
            "write `1250`, or `1.250` if the comma stands before decimals",
        ),
    ],
)
def test_what_cannot_be_taken_says_what_to_write(text: str, measure: str, fault: str, hint: str) -> None:
    with pytest.raises(UnitFault) as found:
        BOOK.read(text, MEASURES[measure])
    assert (found.value.fault, found.value.hint) == (fault, hint)


@given(st.text(max_size=60))
def test_any_text_is_read_or_refused(text: str) -> None:
    for measure in ("mass", "clock", "temperature", "loaves"):
        try:
            BOOK.read(text, MEASURES[measure])
        except UnitFault as fault:
            assert fault.fault


READABLE = sorted(set(MEASURES) - {"count"})


@given(st.sampled_from(READABLE), st.sampled_from(["us", "metric"]), st.floats(-90000, 90000))
def test_what_is_shown_can_be_typed(name: str, system: str, value: float) -> None:
    measure = MEASURES[name]
    if measure.form == "clock":
        value = value % 86400
    shown = show(value, measure, system, BOOK)
    again = BOOK.read(shown, measure)
    assert show(again, measure, system, BOOK) == shown
