"""A figure that a farm writes down and that never counts would be trusted all the same."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def own_figures_count(inspection: Inspection) -> Iterator[Finding]:
    """What an overlay gives a quantity is not what every option of a choice brings anyhow."""
    entries = inspection.reading.entries["quantities"]
    for choice, entry in inspection.library.choices.items():
        brought = set.intersection(*(set(option.values) for option in entry.options.values()))
        for name in sorted(brought & entries.keys()):
            for field, cure in (("default", "write it in the plan"), ("value", "write it at the options in `choices`")):
                given = entries[name].child(field)
                if given is not None and given.layer == "farm":
                    fault = f"`{field}` never counts: each `{choice}` brings a value of its own"
                    yield Finding("quantities", name, (field,), fault, cure)
