"""Entries that are shown in order have an order, not a tie."""

from __future__ import annotations

from collections.abc import Hashable, Iterator

from generator.rules.inspection import Finding, Inspection


def orders_differ(inspection: Inspection) -> Iterator[Finding]:
    """No two phases, groups, pages, skills or paths, and no two procedures of a phase, have the same `order`."""
    library = inspection.library
    for kind in ("phases", "groups", "pages", "procedures", "instructions", "skills", "paths"):
        first: dict[Hashable, str] = {}
        for name, entry in getattr(library, kind).items():
            earlier = first.setdefault((getattr(entry, "phase", ""), entry.order), name)
            if earlier != name:
                fault = f"`{name}` and `{earlier}` have the same order, {entry.order}"
                yield Finding(kind, name, ("order",), fault, "number them in the order in which they are met")
