"""A list of sources is a promise that something rests on each of them."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def sources_are_cited(inspection: Inspection) -> Iterator[Finding]:
    """Every source is cited by an entry."""
    cited = inspection.referred("sources")
    for name in inspection.library.sources:
        if name not in cited:
            yield Finding("sources", name, (), f"source `{name}` is not cited", "cite it, or take it out")
