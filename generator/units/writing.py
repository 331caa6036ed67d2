"""Digits, times of day and times taken, in writing. `site_overrides/phone/writing.js` is the same."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

NO_BREAK = "\u00a0"
MINUS = "\u2212"


def write_number(number: float, digits: int) -> str:
    """Round half up to `digits` decimals; thousands stand apart from 10 000 on."""
    scaled = math.floor(number * float(f"1e{digits}") + 0.5)
    return (MINUS if scaled < 0 else "") + place_point(abs(scaled), digits)


def place_point(scaled: int, digits: int) -> str:
    """Digits with a point before the last few, and thousands apart."""
    text = str(scaled).rjust(digits + 1, "0")
    whole = text[: len(text) - digits]
    if len(whole) > 4:
        whole = re.sub(r"(?<=\d)(?=(\d{3})+$)", NO_BREAK, whole)
    return f"{whole}.{text[-digits:]}" if digits else whole


def show_clock(value: float, translate: Callable[[str], str]) -> str:
    """A time of day from seconds since midnight; the day is named where it is another."""
    minutes = math.floor(value / 60 + 0.5)
    day = math.floor(minutes / 1440)
    time = f"{minutes // 60 % 24}:{_two_digits(minutes % 60)}"
    if day == 0:
        return time
    words = {-1: "the day before", 1: "next day"}.get(day, "{days} days before" if day < 0 else "{days} days after")
    return f"{time} {translate(words).replace('{days}', str(abs(day)))}"


def show_duration(value: float, digits: int, translate: Callable[[str], str]) -> str:
    """Seconds under two minutes, minutes under two hours, days from two days on; seconds count under ten minutes."""
    seconds = math.floor(abs(value) + 0.5)
    minutes = math.floor(abs(value) / 60 + 0.5)
    hours = math.floor(abs(value) / 3600 + 0.5)
    sign = MINUS if value < 0 and seconds > 0 else ""
    if seconds < 120:
        text = f"{write_number(abs(value), digits)} {translate('s')}"
        sign = MINUS if value < 0 and re.search("[1-9]", text) else ""
    elif seconds < 600 and seconds % 60:
        text = f"{seconds // 60} {translate('min')} {_two_digits(seconds % 60)} {translate('s')}"
    elif minutes < 120:
        text = f"{minutes} {translate('min')}"
    elif minutes < 2880:
        text = f"{minutes // 60} {translate('h')} {_two_digits(minutes % 60)} {translate('min')}"
    else:
        words = "{days} days {hours} h" if hours % 24 else "{days} days"
        text = translate(words).replace("{days}", str(hours // 24)).replace("{hours}", str(hours % 24))
    return sign + text.replace(" ", NO_BREAK)


def _two_digits(number: int) -> str:
    return str(number).rjust(2, "0")
