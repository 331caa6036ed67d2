"""Values as a person reads them. `showing.js` on the phone is the same, line for line."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from generator.units.book import MeasureLike, UnitBook

NO_BREAK = "\u00a0"
MINUS = "\u2212"
WORDS = (
    *("the day before", "next day", "{days} days before", "{days} days after"),
    *("{days} days", "{days} days {hours} h", "s", "min", "h"),
)
"""Words that show() itself brings, for translators; units bring their own."""
_RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


def show(
    value: float,
    measure: MeasureLike,
    system: str,
    book: UnitBook,
    digits: int | None = None,
    translate: Callable[[str], str] = str,
) -> str:
    """An SI value in the unit that `system`, "us" or "metric", uses for the measure."""
    if measure.form == "clock":
        return _show_clock(value, translate)
    if measure.form == "duration":
        return _show_duration(value, digits or 0, translate)
    shown = measure.us if system == "us" else measure.metric
    number = write_number(book.from_si(value, shown.unit), shown.digits if digits is None else digits)
    return _with_unit(number, shown.unit, book, translate)


def show_both(
    value: float,
    measure: MeasureLike,
    first: str,
    book: UnitBook,
    digits: int | None = None,
    translate: Callable[[str], str] = str,
) -> str:
    """The value in the first system, and in brackets in the other where that reads differently."""
    second = "metric" if first == "us" else "us"
    one, other = (show(value, measure, system, book, digits, translate) for system in (first, second))
    return one if one == other else f"{one} ({other})"


def write_number(number: float, digits: int) -> str:
    """Round half up to `digits` decimals; thousands stand apart from 10 000 on."""
    scaled = math.floor(number * float(f"1e{digits}") + 0.5)
    return (MINUS if scaled < 0 else "") + _place_point(abs(scaled), digits)


def plainly(value: float, figures: int = 6) -> str:
    """A number by its leading figures, for a working: `333 550`, `0.0125`, `5.67×10⁻⁸`."""
    if value == 0:
        return "0"
    size = abs(value)
    power = math.floor(math.log10(size))
    scaled = _leading(size, power, figures)
    if scaled >= 10**figures or scaled < 10 ** (figures - 1):
        power += 1 if scaled >= 10**figures else -1
        scaled = _leading(size, power, figures)
    sign = MINUS if value < 0 else ""
    if -5 < power < 9:
        decimals = figures - 1 - power
        whole = scaled * 10 ** max(0, -decimals)
        return sign + _without_idle_zeros(_place_point(whole, max(0, decimals)))
    return sign + _without_idle_zeros(_place_point(scaled, figures - 1)) + "×10" + str(power).translate(_RAISED)


def _leading(size: float, power: int, figures: int) -> int:
    shift = figures - 1 - power
    return math.floor((size * float(f"1e{shift}") if shift >= 0 else size / float(f"1e{-shift}")) + 0.5)


def _without_idle_zeros(text: str) -> str:
    return re.sub(r"\.?0+$", "", text) if "." in text else text


def _place_point(scaled: int, digits: int) -> str:
    text = str(scaled).rjust(digits + 1, "0")
    whole = text[: len(text) - digits]
    if len(whole) > 4:
        whole = re.sub(r"(?<=\d)(?=(\d{3})+$)", NO_BREAK, whole)
    return f"{whole}.{text[-digits:]}" if digits else whole


def _with_unit(number: str, unit: str, book: UnitBook, translate: Callable[[str], str]) -> str:
    entry = book.units[unit]
    if entry.pattern:
        sign, size = (MINUS, number[1:]) if number.startswith(MINUS) else ("", number)
        return sign + translate(entry.pattern).replace("#", size)
    symbol = entry.symbol if number in {"1", MINUS + "1"} or not entry.plural else entry.plural
    return f"{number}{NO_BREAK}{translate(symbol)}" if symbol else number


def _show_clock(value: float, translate: Callable[[str], str]) -> str:
    minutes = math.floor(value / 60 + 0.5)
    day = math.floor(minutes / 1440)
    time = f"{minutes // 60 % 24}:{_two_digits(minutes % 60)}"
    if day == 0:
        return time
    words = {-1: "the day before", 1: "next day"}.get(day, "{days} days before" if day < 0 else "{days} days after")
    return f"{time} {translate(words).replace('{days}', str(abs(day)))}"


def _show_duration(value: float, digits: int, translate: Callable[[str], str]) -> str:
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
