"""Every value text in content, with the quantity it is a value of."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.model.leaves import Path
from generator.rules.inspection import Inspection


@dataclass(frozen=True)
class Figure:
    """A value text, where it is written, and whose value it is."""

    kind: str
    name: str
    path: Path
    text: str
    quantity: str

    def read(self, inspection: Inspection) -> float:
        """The value in SI. Raises UnitFault."""
        measure = inspection.library.measures[inspection.quantities[self.quantity].measure]
        return inspection.workbook.book.read(self.text, measure, difference=self.path == ("step",))


def figures(inspection: Inspection) -> Iterator[Figure]:
    """All of them: of quantities, of options, of plans."""
    for name, quantity in inspection.quantities.items():
        entry = _entry(inspection, name)
        for field in ("default", "value", "step"):
            text = getattr(quantity, field)
            if text is not None:
                yield Figure("quantities", entry, (field,), text, name)
        for end, text in enumerate(quantity.range or ()):
            yield Figure("quantities", entry, ("range", end), text, name)
    yield from _of_options(inspection)
    for name, plan in inspection.library.plans.items():
        for key, text in plan.values.items():
            if key in inspection.quantities:
                yield Figure("plans", name, ("values", key), text, key)


def _of_options(inspection: Inspection) -> Iterator[Figure]:
    for name, choice in inspection.library.choices.items():
        for option_name, option in choice.options.items():
            for key, given in option.values.items():
                yield Figure("choices", name, ("options", option_name, "values", key, "value"), given.value, key)


def _entry(inspection: Inspection, quantity: str) -> str:
    """The entry that a quantity comes from; a member of a family comes from the family's."""
    if quantity in inspection.library.quantities:
        return quantity
    same = inspection.quantities[quantity]
    return next(name for name, entry in inspection.library.quantities.items() if entry is same)
