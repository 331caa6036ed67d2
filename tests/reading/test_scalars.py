"""What a bare word in YAML means."""

import math

import pytest

from generator.reading.scalars import resolve

TEXTS = (
    "yes no on off y True FALSE null Null ~ 7:30 190:20:30 2024-05-01 0x1F 0o17 007 -012.5 1_000 1,5 .inf -.INF .nan"
)
MORE = "1e999 12e + - . 1.2.3 = << 9999999999999999999"
NUMBERS = {"0": 0, "-3": -3, "+12": 12, "999999999999999999": 999999999999999999, "0.5": 0.5, ".5": 0.5, "5.": 5.0}
REST = {"-1.25": -1.25, "1e3": 1000.0, "2.5E-3": 0.0025, "true": True, "false": False, "": None}


@pytest.mark.parametrize("text", [*TEXTS.split(), *MORE.split()])
def test_stays_text(text: str) -> None:
    assert resolve(text) == text


@pytest.mark.parametrize(("text", "value"), [*NUMBERS.items(), *REST.items()])
def test_is_read(text: str, value: object) -> None:
    assert resolve(text) == value
    assert type(resolve(text)) is type(value)


def test_numbers_are_always_finite() -> None:
    for text in ("1e308", "1e309", "-1e309", "1" * 400 + "."):
        value = resolve(text)
        assert isinstance(value, str) or math.isfinite(value)
