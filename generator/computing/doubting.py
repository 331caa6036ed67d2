"""How far a given value may lie from the truth."""

from __future__ import annotations

from dataclasses import dataclass

from generator.model.measure import Measure
from generator.units import UnitBook, UnitFault

OF_IT = " of it"
_HUNDREDTHS = "percent"


@dataclass(frozen=True)
class Doubt:
    """`reach` in SI to either side, or as a share of the value where `relative`."""

    reach: float
    relative: bool

    def around(self, value: float) -> tuple[float, float]:
        """The least and the greatest that the value may truly be."""
        reach = abs(value) * self.reach if self.relative else self.reach
        return value - reach, value + reach


def read_doubt(text: str, measure: Measure, book: UnitBook) -> Doubt:
    """A doubt as content writes it: `3 delta_degF`, or `10 percent of it`. Raises UnitFault."""
    if not text.endswith(OF_IT):
        return Doubt(book.read(text, measure, difference=True), relative=False)
    number, _, unit = text.removesuffix(OF_IT).partition(" ")
    if unit != _HUNDREDTHS or not number.replace(".", "", 1).isdigit():
        raise UnitFault(f"`{text}` is not a share", "write for example `10 percent of it`")
    return Doubt(float(number) / 100, relative=True)
