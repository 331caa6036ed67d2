"""Units as they stand in a working: complete, where a page may leave out what is plain."""

from __future__ import annotations

import re
from collections.abc import Callable

from generator.units.book import UnitBook

_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")


def unit_sign(unit: str, book: UnitBook, translate: Callable[[str], str] = str) -> str:
    """`W/m2/K` as `W/(m²·K)`; nothing for bare numbers."""
    if unit == "1":
        return ""
    above, *below = (_part(part, book, translate) for part in unit.split("/"))
    if not below:
        return above
    return f"{above}/{below[0]}" if len(below) == 1 else f"{above}/({'·'.join(below)})"


def _part(part: str, book: UnitBook, translate: Callable[[str], str]) -> str:
    found = re.fullmatch(r"([A-Za-z_]+)(\d*)", part)
    if found is None or found[1] not in book.units:
        return translate(book.units[part].symbol) if part in book.units else part
    return translate(book.units[found[1]].symbol) + found[2].translate(_RAISED)
