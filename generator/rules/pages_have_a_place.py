"""A page of prose does not take the place of another page."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection
from generator.telling import addresses


def pages_have_a_place(inspection: Inspection) -> Iterator[Finding]:
    """No page of prose has the address of something that the site has anyway."""
    for name in inspection.library.pages:
        if addresses.prose(name) in addresses.TAKEN:
            yield Finding("pages", name, (), "the site has a page or a folder of this name", "give it another id")
