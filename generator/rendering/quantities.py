"""Quantities as readers meet them: one for every member, where a quantity is declared for each of a set."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from generator.model.library import Library
from generator.model.quantity import Quantity


@dataclass(frozen=True)
class Known:
    """A quantity by its full id."""

    id: str
    quantity: Quantity
    member: str = ""
    """The title of the member it is for; empty where it is for none."""

    @property
    def kind(self) -> Literal["input", "constant", "result"]:
        """Who sets it: a person, content, or a formula."""
        if self.quantity.formula is not None:
            return "result"
        return "constant" if self.quantity.value is not None else "input"


def know_quantities(library: Library) -> dict[str, Known]:
    """Every quantity by full id, in the order of content."""
    known = {}
    for name, quantity in library.quantities.items():
        if quantity.each is None:
            known[name] = Known(name, quantity)
            continue
        for member, entry in library.sets[quantity.each].members.items():
            known[f"{name}_{member}"] = Known(f"{name}_{member}", quantity, entry.title)
    return known
