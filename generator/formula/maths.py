"""Pieces of MathML, each with how tightly it holds together, so that brackets stand only where they are needed."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from xml.etree import ElementTree

LOOSE, SUM, PRODUCT, FRACTION, POWER, ATOM = range(6)
"""How tightly a piece holds together: a comparison least, a name or a bracket most."""
NO_BREAK = "\u00a0"
_INDENT = '<mspace width="1em"/>'
WIDEST = 38
"""Characters that a row on a phone holds; what cannot be broken scrolls."""


@dataclass(frozen=True)
class Piece:
    """A MathML element, and how tightly it holds."""

    hold: int
    markup: str

    def at_least(self, hold: int) -> str:
        """The element, in brackets where it holds less than it must."""
        return self.markup if self.hold >= hold else bracketed(self.markup)


def width(markup: str) -> int:
    """About how many characters wide an element stands; bars and tables are as wide as their widest row."""
    return _width(ElementTree.fromstring(f"<mrow>{markup}</mrow>"))


def _width(element: ElementTree.Element) -> int:
    inner = [_width(part) for part in element]
    return max(inner) if element.tag in ("mfrac", "mtable") else len(element.text or "") + sum(inner)


def row(*parts: str) -> str:
    """Elements side by side."""
    return f"<mrow>{''.join(parts)}</mrow>"


def sign(character: str) -> str:
    """An operator."""
    return f"<mo>{escape(character)}</mo>"


def name(text: str) -> str:
    """The title of something with a value. Not `mtext`, which counts as white space when signs are set apart."""
    return f"<mi>{escape(text)}</mi>"


def words(text: str) -> str:
    """Words amid the signs."""
    return f"<mtext>{escape(text)}</mtext>"


def bracketed(*parts: str) -> str:
    """Elements in round brackets that grow with them."""
    return row(sign("("), *parts, sign(")"))


def listed(head: str, parts: list[str]) -> str:
    """A named function with its arguments, one below the other where they are wide.

    Semicolons stand between, because a comma may stand before decimals.
    """
    separated = [part + sign(";") for part in parts[:-1]] + parts[-1:]
    if sum(width(part) for part in (head, *parts)) <= WIDEST:
        return row(head, sign("("), *separated, sign(")"))
    if "<mtable" in separated[-1]:
        separated.append(sign(")"))
    else:
        separated[-1] += sign(")")
    return table([(row(head, sign("(")),), *((row(_INDENT, part),) for part in separated)], "stack")


def fraction(above: str, below: str) -> str:
    """One over the other."""
    return f"<mfrac>{above}{below}</mfrac>"


def table(rows: list[tuple[str, ...]], kind: str) -> str:
    """Rows of cells; `kind` is the class that a style sheet lines them up by."""
    lines = "".join("<mtr>" + "".join(f"<mtd>{cell}</mtd>" for cell in cells) + "</mtr>" for cells in rows)
    return f'<mtable class="{kind}" displaystyle="true">{lines}</mtable>'
