"""Units of measurement at the door: texts in, SI inside, texts a person reads out."""

from generator.units.book import UnitBook
from generator.units.dimension import Dimension
from generator.units.fault import UnitFault
from generator.units.showing import plainly, show, show_both

__all__ = ["Dimension", "UnitBook", "UnitFault", "plainly", "show", "show_both"]
