"""Values as a person reads them. `showing.js` on the phone is the same, line for line."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from generator.units.book import MeasureLike, UnitBook
from generator.units.writing import MINUS, NO_BREAK, place_point, show_clock, show_duration, write_number

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
        return show_clock(value, translate)
    if measure.form == "duration":
        return show_duration(value, digits or 0, translate)
    shown = measure.us if system == "us" else measure.metric
    number = write_number(book.from_si(value, shown.unit), shown.digits if digits is None else digits)
    number = _without_idle_zeros(number) if measure.form == "parts" else number
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
        return sign + _without_idle_zeros(place_point(whole, max(0, decimals)))
    return sign + _without_idle_zeros(place_point(scaled, figures - 1)) + "×10" + str(power).translate(_RAISED)


def _leading(size: float, power: int, figures: int) -> int:
    shift = figures - 1 - power
    return math.floor((size * float(f"1e{shift}") if shift >= 0 else size / float(f"1e{-shift}")) + 0.5)


def _without_idle_zeros(text: str) -> str:
    return re.sub(r"\.?0+$", "", text) if "." in text else text


def _with_unit(number: str, unit: str, book: UnitBook, translate: Callable[[str], str]) -> str:
    entry = book.units[unit]
    if entry.pattern:
        sign, size = (MINUS, number[1:]) if number.startswith(MINUS) else ("", number)
        return sign + translate(entry.pattern).replace("#", size)
    symbol = entry.symbol if number in {"1", MINUS + "1"} or not entry.plural else entry.plural
    return f"{number}{NO_BREAK}{translate(symbol)}" if symbol else number
