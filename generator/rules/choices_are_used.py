"""A choice that changes nothing only asks a question."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def choices_are_used(inspection: Inspection) -> Iterator[Finding]:
    """Every choice is asked for in a formula, a condition, a text or a step, or its options bring values."""
    used = inspection.in_formulas | inspection.in_texts | inspection.referred("choices")
    for name, choice in inspection.library.choices.items():
        if name not in used and not any(option.values for option in choice.options.values()):
            yield Finding(
                "choices", name, (), f"choice `{name}` changes nothing", "use it in a formula, or take it out"
            )
