"""Values as people read them, in Python and on the phone."""

from __future__ import annotations

import json
import random
from functools import cache

import pytest

from generator.units import plainly, show, show_both
from tests.formula.phone_machine import PhoneMachine
from tests.units.shop import BOOK, MEASURES, UNITS

SHOWN = [
    (335.9277777777778, "temperature", "145 °F (63 °C)"),
    (255.372, "temperature", "0 °F (−18 °C)"),
    (5, "warming", "9.0 °F (5.0 °C)"),
    (45, "mass", "99.2 lb (45.0 kg)"),
    (0, "mass", "0.0 lb (0.0 kg)"),
    (-0.001, "mass", "0.0 lb (0.0 kg)"),
    (-2, "mass", "−4.4 lb (−2.0 kg)"),
    (2.6, "loaf_mass", "91.7 oz (2.60 kg)"),
    (1, "loaves", "1 loaf"),
    (0, "loaves", "0 loaves"),
    (120, "loaves", "120 loaves"),
    (0.745, "share", "75%"),
    (9999.4, "count", "9999"),
    (12345, "count", "12 345"),
    (1234567, "count", "1 234 567"),
    (0.005, "ratio", "0.01"),
    (0.25, "people", "0.25"),
    (3, "people", "3"),
    (1.5, "people", "1.5"),
    (10, "people", "10"),
    (2.004, "people", "2"),
    (2 / 3, "people", "0.67"),
    (-1, "people", "−1"),
    (11722.844444, "power", "40 000 Btu/h (11.7 kW)"),
    (9.920801798319491, "price", "$4.50/lb ($9.92/kg)"),
    (-3.5, "money", "−$3.50"),
    (27000, "clock", "7:30"),
    (26999.9, "clock", "7:30"),
    (0, "clock", "0:00"),
    (-14400, "clock", "20:00 the day before"),
    (86370, "clock", "0:00 next day"),
    (88128, "clock", "0:29 next day"),
    (-129600, "clock", "12:00 2 days before"),
    (259200, "clock", "0:00 3 days after"),
    (0, "duration", "0 s"),
    (-0.2, "duration", "0 s"),
    (90, "duration", "90 s"),
    (-95, "duration", "−95 s"),
    (119.4, "duration", "119 s"),
    (119.6, "duration", "2 min"),
    (125, "duration", "2 min 05 s"),
    (599.7, "duration", "10 min"),
    (4000, "duration", "67 min"),
    (7169, "duration", "119 min"),
    (7199, "duration", "2 h 00 min"),
    (7500, "duration", "2 h 05 min"),
    (-7500, "duration", "−2 h 05 min"),
    (172800, "duration", "2 days"),
    (180100, "duration", "2 days 2 h"),
]
PLAIN = [
    (0, "0"),
    (1, "1"),
    (-273.15, "−273.15"),
    (333550, "333 550"),
    (123456789, "123 457 000"),
    (1234567890, "1.23457×10⁹"),
    (5.67e-8, "5.67×10⁻⁸"),
    (0.0125, "0.0125"),
    (1 / 3, "0.333333"),
    (9.9999996, "10"),
    (999999.6, "1 000 000"),
    (0.00012345678, "0.000123457"),
    (0.00001, "1×10⁻⁵"),
    (1e23, "1×10²³"),
]


@cache
def phone() -> PhoneMachine:
    units = {}
    for text, unit in UNITS.items():
        size = BOOK.size(text)
        about = {"symbol": unit.symbol, "plural": unit.plural, "pattern": unit.pattern}
        units[text] = {**about, "factor": float(size.factor), "offset": float(size.offset)}
    measures = {name: measure.model_dump() for name, measure in MEASURES.items()}
    return PhoneMachine(f"const shown = showing({json.dumps(measures)}, {json.dumps(units)});")


@pytest.mark.parametrize(("value", "measure", "expected"), SHOWN)
def test_both_systems(value: float, measure: str, expected: str) -> None:
    assert show_both(value, MEASURES[measure], "us", BOOK).replace("\u00a0", " ") == expected
    assert phone().run("shown.showBoth(v, m, 'us')", v=value, m=measure).replace("\u00a0", " ") == expected


@pytest.mark.parametrize(
    ("value", "measure", "expected"),
    [
        (335.9277777777778, "temperature", "63 °C (145 °F)"),
        (45, "mass", "45.0 kg (99.2 lb)"),
        (9.920801798319491, "price", "$9.92/kg ($4.50/lb)"),
        (120, "loaves", "120 loaves"),
    ],
)
def test_a_metric_farm_reads_its_own_system_first(value: float, measure: str, expected: str) -> None:
    assert show_both(value, MEASURES[measure], "metric", BOOK).replace("\u00a0", " ") == expected
    assert phone().run("shown.showBoth(v, m, 'metric')", v=value, m=measure).replace("\u00a0", " ") == expected


@pytest.mark.parametrize(("value", "expected"), PLAIN)
def test_leading_figures(value: float, expected: str) -> None:
    assert plainly(value).replace("\u00a0", " ") == expected
    assert phone().run("plainly(v)", v=value).replace("\u00a0", " ") == expected


def test_nothing_breaks_between_a_number_and_its_unit() -> None:
    assert show(45, MEASURES["mass"], "metric", BOOK) == "45.0\u00a0kg"
    assert show(7500, MEASURES["duration"], "metric", BOOK) == "2\u00a0h\u00a005\u00a0min"


def test_a_quantity_may_want_other_digits() -> None:
    assert show(45.678, MEASURES["mass"], "metric", BOOK, digits=2) == "45.68\u00a0kg"
    assert show(12.34, MEASURES["duration"], "us", BOOK, digits=1) == "12.3\u00a0s"
    assert phone().run("shown.show(45.678, 'mass', 'metric', 2)") == "45.68\u00a0kg"


def test_words_of_its_own_are_translated() -> None:
    spanish = {"the day before": "el día antes", "loaves": "panes", "h": "h", "{days} days": "{days} días"}
    told = {name: (lambda text: spanish.get(text, text)) for name in ("translate",)}
    assert show(-14400, MEASURES["clock"], "us", BOOK, **told) == "20:00 el día antes"
    assert show(12, MEASURES["loaves"], "us", BOOK, **told) == "12\u00a0panes"
    assert show(172800, MEASURES["duration"], "us", BOOK, **told) == "2\u00a0días"


def test_the_phone_shows_what_python_shows() -> None:
    chance = random.Random(7)
    asked = []
    for _ in range(4000):
        size = 10 ** chance.uniform(-6, 7)
        value = chance.choice([size, -size, round(size), round(size) + 0.5])
        asked.append(
            (value, chance.choice(sorted(MEASURES)), chance.choice(["us", "metric"]), chance.choice([None, 0, 3]))
        )
    by_phone = phone().run("asked.map(([v, m, s, d]) => [shown.show(v, m, s, d), plainly(v)])", asked=asked)
    by_python = [[show(v, MEASURES[m], s, BOOK, d), plainly(v)] for v, m, s, d in asked]
    assert by_phone == by_python


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("6,5", 6.5),
        ("6.5", 6.5),
        ("−3", -3),
        ("12 000", 12000),
        ("12\u00a0000,5", 12000.5),
        ("40 5", None),
        ("1,250", None),
        ("+1,250", None),
        ("+1.5", 1.5),
        ("", None),
        ("abc", None),
        ("1.2.3", None),
    ],
)
def test_numbers_typed_on_the_phone(text: str, expected: float | None) -> None:
    assert phone().run("readNumber(text)", text=text) == expected
