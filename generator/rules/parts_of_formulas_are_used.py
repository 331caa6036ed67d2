"""Functions, tables and sets exist for formulas."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def parts_of_formulas_are_used(inspection: Inspection) -> Iterator[Finding]:
    """Every function, table and set is used by a formula, and a set may be used by a family of quantities."""
    used = inspection.in_formulas | inspection.referred("sets")
    for kind, noun in (("functions", "function"), ("tables", "table"), ("sets", "set")):
        for name in getattr(inspection.library, kind):
            if name not in used:
                yield Finding(kind, name, (), f"{noun} `{name}` is not used", "use it in a formula, or take it out")
