"""What a unit measures, apart from its size: the powers of the base units."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class Dimension:
    """Powers of base units, sorted by name and none of them zero, so that equal dimensions compare equal."""

    powers: tuple[tuple[str, Fraction], ...] = ()

    @classmethod
    def of(cls, powers: Mapping[str, Fraction | int]) -> Dimension:
        """Take powers by base unit in any order."""
        return cls(tuple(sorted((base, Fraction(power)) for base, power in powers.items() if power)))

    def __mul__(self, other: Dimension) -> Dimension:
        powers = dict(self.powers)
        for base, power in other.powers:
            powers[base] = powers.get(base, Fraction(0)) + power
        return Dimension.of(powers)

    def __truediv__(self, other: Dimension) -> Dimension:
        return self * other ** Fraction(-1)

    def __pow__(self, exponent: Fraction) -> Dimension:
        return Dimension.of({base: power * exponent for base, power in self.powers})

    def __str__(self) -> str:
        return "·".join(base if power == 1 else f"{base}^{power}" for base, power in self.powers) or "1"


PLAIN = Dimension()
"""The dimension of bare numbers."""
