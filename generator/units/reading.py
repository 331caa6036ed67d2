"""Value texts as people write them: `2.6 kg/m2`, `145 °F`, `6,5 kg`, `7:30`, `1 h 30 min`, `$4.50/lb`."""

from __future__ import annotations

import re
from fractions import Fraction

from generator.problems import did_you_mean
from generator.units.book import MeasureLike, UnitBook
from generator.units.fault import UnitFault

_NUMBER = r"(?:\d{1,3}(?: \d{3})+(?!\d)(?:[.,]\d+)?|\d+(?:[.,]\d+)*|[.,]\d+)(?:[eE][+-]?\d{1,2})?"
_PART = re.compile(rf"\s*(?P<before>[^\d\s.,+-]*)\s*(?P<number>{_NUMBER})\s*(?P<unit>[^\d\s].*?)?(?=\s+\d|\s*$)")
_CLOCK = re.compile(
    r"(\d{1,2})(?::(\d{2})|(?=\s*[ap]\.?m))\s*(?:([ap])\.?m\.?)?\s*(the day before|next day)?", re.IGNORECASE
)
_TWO_WAYS = re.compile(r"\d+:\d{2}")
_DAYS = {None: 0, "the day before": -1, "next day": 1}
_LONGEST = 60


def read_value(text: str, measure: MeasureLike, book: UnitBook, *, difference: bool = False) -> float:
    """SI value of a text. With `difference`, degrees are taken as a difference of temperatures. Raises UnitFault."""
    if not text.strip():
        raise UnitFault("the value is empty", _example(measure))
    written = re.sub(r"[\u00a0\u2009\u202f]", " ", text).replace("\u2212", "-").strip()
    if measure.form == "clock" and (":" in written or _CLOCK.fullmatch(written)):
        return _read_clock(written, text)
    if measure.form == "duration" and _TWO_WAYS.fullmatch(written):
        long, short = written.split(":")
        raise UnitFault(f"`{text}` can be read in two ways", f"write `{long} h {short} min` or `{long} min {short} s`")
    sign, rest = (-1, written[1:]) if written.startswith("-") else (1, written.removeprefix("+"))
    parts = _split(rest, text, measure)
    if len(parts) > 1 and not all(before + unit for before, _, unit in parts):
        raise UnitFault(f"`{text}` is not one value", _example(measure))
    units = [_find_unit(before + unit, text, measure, book, difference) for before, _, unit in parts]
    numbers = [sign * read_number(number) for _, number, _ in parts]
    if len(parts) == 1:
        offset = 0 if difference else book.size(units[0]).offset
        return float(numbers[0] * book.size(units[0]).factor + offset)
    if any(book.reads_a_point(unit) for unit in units):
        raise UnitFault(f"`{text}` is not one value", _example(measure))
    return float(sum(number * book.size(unit).factor for number, unit in zip(numbers, units, strict=True)))


def read_number(text: str) -> Fraction:
    """A number with a point or a comma before its decimals. Raises UnitFault where a comma may mean thousands."""
    digits = text.replace(" ", "")
    if re.fullmatch(r"[1-9]\d{0,2}(,\d{3})+", digits):
        decimal = f", or `{digits.replace(',', '.')}` if the comma stands before decimals"
        hint = f"write `{digits.replace(',', '')}`{decimal if digits.count(',') == 1 else ''}"
        raise UnitFault(f"`{text}` can be read in two ways", hint)
    if len(re.findall(r"[.,]", digits)) > 1:
        raise UnitFault(f"`{text}` can be read in two ways", "write no mark between thousands")
    return Fraction(digits.replace(",", "."))


def _split(rest: str, text: str, measure: MeasureLike) -> list[tuple[str, str, str]]:
    """The parts of a text as (sign before, number, unit); `2 h 05 min` has two."""
    parts, at = [], 0
    while at < len(rest) <= _LONGEST and (found := _PART.match(rest, at)):
        parts.append((found["before"], found["number"], (found["unit"] or "").strip()))
        at = found.end()
    if not parts or rest[at:].strip():
        raise UnitFault(f"`{text}` is not a number with a unit", _example(measure))
    return parts


def _find_unit(written: str, text: str, measure: MeasureLike, book: UnitBook, difference: bool) -> str:
    """The unit text meant: by its own text, or by the symbol that pages show, whichever fits the measure."""
    if not written:
        if book.counts_things(measure.unit):
            return measure.unit
        raise UnitFault(f"`{text}` has no unit", _example(measure))
    meant = book.meant_by(written)
    wanted = book.dimension(measure.unit)
    if not meant:
        known = () if measure.form == "clock" else book.ways_to_write(wanted)
        raise UnitFault(f"unknown unit `{written}`", did_you_mean(written, known, _example(measure)))
    fitting = [unit for unit in meant if unit not in book.unknown and book.dimension(unit) == wanted]
    scales = [unit for unit in fitting if book.reads_a_point(unit) == (measure.point and not difference)]
    if scales or (fitting and difference):
        return (scales or fitting)[0]
    if measure.point and measure.unit in fitting:  # kelvins may stand on a thermometer too
        return measure.unit
    usual = ("min", "h", "s") if measure.form == "duration" else (measure.us.unit, measure.metric.unit)
    units = " or ".join(f"`{unit}`" for unit in dict.fromkeys(usual))
    raise UnitFault(f"`{written}` does not fit “{measure.title}”", f"write it in {units}")


def _read_clock(written: str, text: str) -> float:
    found = _CLOCK.fullmatch(written)
    hours, minutes, half = (int(found[1]), int(found[2] or 0), (found[3] or "").lower()) if found else (99, 0, "")
    if half:
        hours = hours % 12 + (12 if half == "p" else 0) if 1 <= hours <= 12 else 99
    if not found or minutes > 59 or hours * 60 + minutes > 24 * 60:
        raise UnitFault(f"`{text}` is not a time of day", "write for example `7:30` or `19:30`")
    return float((_DAYS[found[4] and found[4].lower()] * 24 + hours) * 3600 + minutes * 60)


def _example(measure: MeasureLike) -> str:
    unit = measure.metric.unit
    examples = {"clock": "`7:30`", "duration": "`90 s`, `15 min` or `2 h`"}
    return f"write for example {examples.get(measure.form, '`12`' if unit == '1' else f'`12 {unit}`')}"
