"""The units that may be written, their sizes, and values taken into SI and out of it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from functools import cached_property
from pathlib import Path
from typing import Protocol

from generator.problems import did_you_mean
from generator.units.dimension import PLAIN, Dimension
from generator.units.fault import UnitFault
from generator.units.sizing import Size, size_units


class UnitLike(Protocol):
    """A unit text as content declares it."""

    @property
    def symbol(self) -> str: ...  # noqa: D102
    @property
    def plural(self) -> str: ...  # noqa: D102
    @property
    def pattern(self) -> str: ...  # noqa: D102
    @property
    def base(self) -> bool: ...  # noqa: D102
    @property
    def definition(self) -> str: ...  # noqa: D102
    @property
    def also(self) -> Sequence[str]: ...  # noqa: D102


class ShownLike(Protocol):
    """A unit to show, and how many digits stand behind the point."""

    @property
    def unit(self) -> str: ...  # noqa: D102
    @property
    def digits(self) -> int: ...  # noqa: D102


class MeasureLike(Protocol):
    """What is measured: its SI unit and how each system of units shows it."""

    @property
    def title(self) -> str: ...  # noqa: D102
    @property
    def unit(self) -> str: ...  # noqa: D102
    @property
    def point(self) -> bool: ...  # noqa: D102
    @property
    def form(self) -> str: ...  # noqa: D102
    @property
    def us(self) -> ShownLike: ...  # noqa: D102
    @property
    def metric(self) -> ShownLike: ...  # noqa: D102


class UnitBook:
    """An allow-list of unit texts. Every other text is refused, with the nearest one named."""

    def __init__(self, units: Mapping[str, UnitLike], memory: Path | None = None) -> None:
        self.units = units
        bases = tuple(text for text, unit in units.items() if unit.base)
        self._bases = frozenset(bases)
        self._sizes = size_units({text: unit.definition or text for text, unit in units.items()}, bases, memory)
        self.unknown = tuple(text for text in units if text not in self._sizes)
        """Texts on the list that the unit library cannot size; they need a `definition`."""

    def size(self, unit: str) -> Size:
        """Factor, offset and dimension. Raises UnitFault for a text that is not on the list."""
        if unit not in self._sizes:
            raise UnitFault(f"unknown unit `{unit}`", did_you_mean(unit, self._sizes))
        return self._sizes[unit]

    def meant_by(self, written: str) -> tuple[str, ...]:
        """The unit texts for which that may stand: the text itself, or what pages show for it."""
        return self._written.get(written, ())

    def ways_to_write(self, dimension: Dimension) -> list[str]:
        """Every text that stands for a unit of that dimension."""
        return [
            way
            for way, meant in self._written.items()
            if any(unit in self._sizes and self.dimension(unit) == dimension for unit in meant)
        ]

    @cached_property
    def _written(self) -> dict[str, tuple[str, ...]]:
        found: dict[str, tuple[str, ...]] = {}
        for text, unit in self.units.items():
            for way in {text, unit.symbol, unit.symbol.replace("°", ""), unit.plural or text, *unit.also}:
                found[way] = (*found.get(way, ()), text)
        return found

    def dimension(self, unit: str) -> Dimension:
        """What the unit measures."""
        return self.size(unit).dimension

    def reads_a_point(self, unit: str) -> bool:
        """Whether the unit is a scale with its own zero, as thermometers have."""
        return self.size(unit).offset != 0

    def counts_things(self, unit: str) -> bool:
        """Whether a bare number may stand for it: no unit at all, or a counted thing."""
        size = self.size(unit)
        counted = {Dimension.of({base: 1}) for base in self._bases}
        return size.factor == 1 and (size.dimension == PLAIN or size.dimension in counted)

    def to_si(self, number: Fraction | float, unit: str) -> float:
        """Exact up to the last rounding where the number is a Fraction."""
        size = self.size(unit)
        return float(Fraction(number) * size.factor + size.offset)

    def from_si(self, value: float, unit: str) -> float:
        """The number of such units; in the same order of float operations as on the phone."""
        size = self.size(unit)
        return (value - float(size.offset)) / float(size.factor)

    def name(self, dimension: Dimension) -> str:
        """A unit text of that dimension and of SI size, or the base units where the list has none."""
        for text, size in self._sizes.items():
            if size.dimension == dimension and size.factor == 1 and size.offset == 0:
                return text
        return str(dimension)

    def read(self, text: str, measure: MeasureLike, *, difference: bool = False) -> float:
        """A value text such as `2.6 kg` or `7:30`, in SI. Raises UnitFault."""
        from generator.units.reading import read_value

        return read_value(text, measure, self, difference=difference)
