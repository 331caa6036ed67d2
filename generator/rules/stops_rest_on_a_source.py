"""Memory may warn; it may not forbid."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def stops_rest_on_a_source(inspection: Inspection) -> Iterator[Finding]:
    """A watch that stops the day rests on more than memory."""
    for name, watch in inspection.library.watches.items():
        if watch.stop and all(inspection.library.is_remembered(citation) for citation in watch.source):
            yield Finding(
                "watches", name, ("source",), f"`{name}` stops the day on memory alone", "find a source for it"
            )
