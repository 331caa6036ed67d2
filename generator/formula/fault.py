"""What is wrong with a formula, and where in it."""

from __future__ import annotations

import re
from collections.abc import Iterable

_WIDEST = 100


class FormulaFault(Exception):  # noqa: N818 - it carries a finding about a text, not a failure of the program
    """A fault between two columns of the formula; columns count from 1, and `end` is the first one after it."""

    def __init__(self, fault: str, hint: str = "", column: int = 1, end: int = 2) -> None:
        self.fault = fault
        self.hint = hint
        self.column = column
        self.end = end
        super().__init__(f"{fault} ({hint})" if hint else fault)

    @property
    def faults(self) -> tuple[FormulaFault, ...]:
        """Itself, as of those that come together."""
        return (self,)

    def excerpt(self, text: str, label: str = "formula") -> tuple[str, str]:
        """The formula, or the part of a long one around the fault, with carets below the fault."""
        line = on_one_line(text)
        start, end = self.column - 1, max(self.column, min(self.end - 1, len(line)))
        cut = max(0, min(start - _WIDEST // 3, len(line) - _WIDEST))
        shown = ("... " if cut else "") + line[cut : cut + _WIDEST] + (" ..." if cut + _WIDEST < len(line) else "")
        before = len(f"{label}: ") + (4 if cut else 0) + start - cut
        return f"{label}: {shown}", " " * before + "^" * (min(end, cut + _WIDEST) - start)


class FormulaFaults(Exception):  # noqa: N818 - as above
    """All faults that one reading of a formula found."""

    def __init__(self, faults: Iterable[FormulaFault]) -> None:
        self.faults = tuple(faults)
        super().__init__("; ".join(fault.fault for fault in self.faults))


def on_one_line(text: str) -> str:
    """The text without white space at its ends, and with a space for white space of every kind."""
    return re.sub(r"\s", " ", text.strip())
