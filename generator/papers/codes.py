"""The code on a card that leads a phone to its page."""

from __future__ import annotations

import io
from functools import cache

import segno

from generator.papers.data import Data

DOTS = 3
"""A square of the code is so many dots wide, so that viewers that smooth pictures still show edges."""


def with_code(paper: Data) -> Data:
    """The paper, and where it has the address of a page, the same as a picture. Drawing takes long: do it last."""
    return {**paper, "code_picture": _code(paper["code_address"])} if "code_address" in paper else paper


@cache
def _code(address: str) -> list[int]:
    """The address as a QR code: the bytes of a PNG, which is a quarter of a drawing of it in lines."""
    drawn = io.BytesIO()
    segno.make(address, error="m", micro=False).save(drawn, kind="png", border=0, scale=DOTS)
    return list(drawn.getvalue())
