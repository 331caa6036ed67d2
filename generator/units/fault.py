"""What is wrong with a value or a unit that a person wrote."""

from __future__ import annotations


class UnitFault(Exception):  # noqa: N818 - it carries a finding about a text, not a failure of the program
    """A text that cannot be taken as a value, and what to write instead."""

    def __init__(self, fault: str, hint: str = "") -> None:
        self.fault = fault
        self.hint = hint
        super().__init__(f"{fault} ({hint})" if hint else fault)
