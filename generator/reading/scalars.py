"""What a bare YAML scalar means. Nothing is guessed: `no`, `7:30` and `2024-05-01` stay the text they are."""

from __future__ import annotations

import math
import re

from generator.reading.tree import Scalar

_WHOLE = re.compile(r"[-+]?(0|[1-9][0-9]{0,17})")
_FRACTION = re.compile(r"[-+]?([0-9]+\.[0-9]*|\.[0-9]+|[0-9]+(?=[eE]))([eE][-+]?[0-9]+)?")


def resolve(text: str) -> Scalar:
    """true, false, a whole number, a finite number or nothing (None); any other text is itself."""
    if text in ("true", "false"):
        return text == "true"
    if not text:
        return None
    if _WHOLE.fullmatch(text):
        return int(text)
    if _FRACTION.fullmatch(text) and not _has_leading_zero(text) and math.isfinite(float(text)):
        return float(text)
    return text


def _has_leading_zero(text: str) -> bool:
    """True for `007`: a code that happens to be made of digits."""
    digits = text.lstrip("+-")
    return len(digits) > 1 and digits[0] == "0" and digits[1].isdigit()
