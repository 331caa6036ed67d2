"""What is wrong with a value or a unit that a person wrote."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


class UnitFault(Exception):  # noqa: N818 - it carries a finding about a text, not a failure of the program
    """A text that cannot be taken as a value, and what to write instead."""

    def __init__(self, fault: str, hint: str = "") -> None:
        self.fault = fault
        self.hint = hint
        super().__init__(f"{fault} ({hint})" if hint else fault)


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """A hint naming the known word nearest to `word`, or nothing where none is near."""
    near = get_close_matches(word, sorted(known), n=1, cutoff=0.6)
    return f"did you mean `{near[0]}`?" if near else ""
