"""What a day comes to and teaches must follow from what is read in it."""

from __future__ import annotations

from collections.abc import Iterator

from generator.records.formulas import link_formulas
from generator.rules.inspection import Finding, Inspection


def days_can_be_worked_out(inspection: Inspection) -> Iterator[Finding]:
    """Formulas of tallies and lessons name readings and quantities, and give what they must; limits fit readings."""
    for flaw in link_formulas(inspection.workbook)[1]:
        yield Finding(*flaw)
