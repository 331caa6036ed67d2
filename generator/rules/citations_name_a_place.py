"""A source without the place in it cannot be looked up."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def citations_name_a_place(inspection: Inspection) -> Iterator[Finding]:
    """A citation that names a source names the place in it: a page, a table, a section."""
    for kind, name, path, citation in inspection.citations:
        if citation.id and not citation.place:
            hint = f'write {{id: {citation.id}, place: "p. 12"}}: a page, a table or a section'
            yield Finding(kind, name, (*path, "id"), f"`{citation.id}` is cited without a place in it", hint)
