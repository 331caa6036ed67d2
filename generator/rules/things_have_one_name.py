"""Two names for one thing make a reader look for two things."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.model.roles import Human
from generator.rules.inspection import Finding, Inspection

_MAY_NAME = ("terms", "sources")
"""A glossary may say what else a thing is called, and a source has the title it has."""


def things_have_one_name(inspection: Inspection) -> Iterator[Finding]:
    """No text uses a word that a term lists under `instead_of`, but for the glossary and what a source says."""
    names = {other.casefold(): term.title for term in inspection.library.terms.values() for other in term.instead_of}
    if not names:
        return
    either = "|".join(re.escape(name) for name in sorted(names, key=len, reverse=True))
    pattern = re.compile(rf"(?i)(?<!\w)(?:{either})(?!\w)")
    for leaf in inspection.human:
        if leaf.kind not in _MAY_NAME and isinstance(leaf.role, Human) and not leaf.role.figures:
            text = leaf.text.casefold()
            if not any(name in text for name in names):
                continue
            for found in pattern.finditer(leaf.text):
                fault, hint = f"“{found[0]}” has another name here", f"write “{names[found[0].casefold()]}”"
                yield Finding(leaf.kind, leaf.name, leaf.path, fault, hint, column=found.start() + 1)
