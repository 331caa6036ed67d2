"""A farm that is no demonstration names people whom somebody can call."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection

_FOR_FICTION = re.compile(r"(?<!\d)555[ .-]?01\d\d(?!\d)")
"""The North American Numbering Plan keeps 555-0100 to 555-0199 for fiction (as told in print)."""


def contacts_can_be_reached(inspection: Inspection) -> Iterator[Finding]:
    """None has a number that was invented for the farm from which its folder was copied."""
    for farm_id, farm in inspection.library.farm.items():
        for name, contact in farm.contacts.items():
            number = _FOR_FICTION.search(contact.call)
            if number and not farm.demo:
                fault = f"nobody answers at {number[0]}: such numbers are kept for fiction"
                hint = "write whom your crew can call; `demo: true` says of a farm that it is invented"
                yield Finding("farm", farm_id, ("contacts", name, "call"), fault, hint)
