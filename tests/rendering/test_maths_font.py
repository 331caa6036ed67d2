"""The font of the workings: small, with the signs the printers use, and with what makes brackets stretch."""

from __future__ import annotations

import re

from fontTools.ttLib import TTFont

from generator.pipeline.order import OVERRIDES
from generator.rendering import Rendered

FONT = OVERRIDES / "look/workings.woff2"
LARGEST = 34_000


def test_it_is_small() -> None:
    assert FONT.stat().st_size < LARGEST


def test_it_stretches_brackets_and_knows_every_operator(rendered: Rendered) -> None:
    font = TTFont(FONT)
    signs = font.getBestCmap()
    variants = font["MATH"].table.MathVariants
    stretching = set(variants.VertGlyphCoverage.glyphs)
    assert {signs[ord(sign)] for sign in "()∫"} <= stretching
    used = {
        sign
        for text in rendered.files.values()
        for found in re.findall(r"<mo[^>]*>([^<]+)</mo>", text)
        for sign in found
    }
    assert used
    missing = {sign for sign in used if ord(sign) not in signs and not sign.isalpha() and not sign.isspace()}
    assert missing == set()


def test_its_licence_comes_with_it() -> None:
    assert "SIL OPEN FONT LICENSE" in (OVERRIDES / "look/workings.OFL.txt").read_text(encoding="utf-8").upper()
