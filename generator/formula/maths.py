"""Pieces of MathML, each with how tightly it holds together, so that brackets stand only where they are needed."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape

LOOSE, SUM, PRODUCT, FRACTION, POWER, ATOM = range(6)
"""How tightly a piece holds together: a comparison least, a name or a bracket most."""
NO_BREAK = "\u00a0"


@dataclass(frozen=True)
class Piece:
    """A MathML element, and how tightly it holds."""

    hold: int
    markup: str

    def at_least(self, hold: int) -> str:
        """The element, in brackets where it holds less than it must."""
        return self.markup if self.hold >= hold else bracketed(self.markup)

    @property
    def width(self) -> int:
        """About how many characters wide it stands."""
        inside, width = False, 0
        for character in self.markup:
            inside = character == "<" or (inside and character != ">")
            width += not inside and character != ">"
        return width


def row(*parts: str) -> str:
    """Elements side by side."""
    return f"<mrow>{''.join(parts)}</mrow>"


def sign(character: str) -> str:
    """An operator."""
    return f"<mo>{escape(character)}</mo>"


def words(text: str) -> str:
    """Words amid the signs."""
    return f"<mtext>{escape(text)}</mtext>"


def bracketed(*parts: str) -> str:
    """Elements in round brackets that grow with them."""
    return row(sign("("), *parts, sign(")"))


def listed(name: str, parts: list[str]) -> str:
    """A named function with its arguments; semicolons, because a comma may stand before decimals."""
    between = sign(";").join(parts)
    return row(name, sign("("), between, sign(")"))


def fraction(above: str, below: str) -> str:
    """One over the other."""
    return f"<mfrac>{above}{below}</mfrac>"


def table(rows: list[tuple[str, ...]], kind: str) -> str:
    """Rows of cells; `kind` is the class that a style sheet lines them up by."""
    lines = "".join("<mtr>" + "".join(f"<mtd>{cell}</mtd>" for cell in cells) + "</mtr>" for cells in rows)
    return f'<mtable class="{kind}" displaystyle="true">{lines}</mtable>'
