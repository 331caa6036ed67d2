"""Every number of a plan: content's formulas checked, put in order and computed, here and in the code for phones."""

from generator.computing.day import Day, Refusal
from generator.computing.settling import Settings
from generator.computing.workbook import Workbook

__all__ = ["Day", "Refusal", "Settings", "Workbook"]
