"""A range keeps slips out; a default outside it would be refused on the phone as soon as it is touched."""

from __future__ import annotations

from collections.abc import Iterator

from generator.model.leaves import Path
from generator.rules.inspection import Finding, Inspection
from generator.units.within import lies_within


def inputs_lie_in_range(inspection: Inspection) -> Iterator[Finding]:
    """An input's default, and what options bring for it, lies in its range, and is whole where it counts."""
    for name, quantity in inspection.library.quantities.items():
        if quantity.default is not None:
            yield from _outside(inspection, name, quantity.default, ("quantities", name, ("default",)))
    for name, choice in inspection.library.choices.items():
        for option_name, option in choice.options.items():
            for key, given in option.values.items():
                path = ("options", option_name, "values", key, "value")
                yield from _outside(inspection, key, given.value, ("choices", name, path))


def _outside(inspection: Inspection, name: str, text: str, where: tuple[str, str, Path]) -> Iterator[Finding]:
    quantity = inspection.quantities[name] if name in inspection.quantities else inspection.library.quantities[name]
    if quantity.range is None:
        return
    measure, book = inspection.library.measures[quantity.measure], inspection.workbook.book
    value, least, most = (book.read(each, measure) for each in (text, *quantity.range))
    if not lies_within(value, least, most):
        low, high = quantity.range
        yield Finding(*where, f"`{name}` is {text}, out of its range", f"from {low} to {high}")
    elif quantity.whole and value != round(value):
        yield Finding(*where, f"`{name}` is {text}, and it counts things", "write a whole number")
