"""Codes are those of segno, module for module, for every version, level and mask that may be drawn.

Of the eight masks each version is drawn with two or more, in turn: a mask knows only rows and columns.
"""

import random
from typing import Any

import pytest
import segno
from segno.encoder import evaluate_mask

from tests.phone.conftest import Ask
from tests.repeating import TIMES

LETTERS = "abcdefghijklmnopqrstuvwxyz0123456789~/:.#=%-"
MASKS = min(2 * TIMES, 8)
DRAW = "drawCode(new Uint8Array(bytes), version, level, mask)"


@pytest.fixture(autouse=True)
def fill_as_the_standard_says(monkeypatch: pytest.MonkeyPatch) -> None:
    """segno 1.6.6 puts a byte of noughts before the pad words where a text ends on a byte, as every text of bytes does.

    Readers pass over it. The standard (7.4.10) fills up only to the end of a byte, and so do we.
    """

    def fill(buffer: Any, version: int, length: int) -> None:
        buffer.extend([0] * (-length % 8))

    monkeypatch.setattr("segno.encoder.write_padding_bits", fill)


def _text(length: int, seed: int) -> str:
    chance = random.Random(seed)
    return "".join(chance.choice(LETTERS) for _ in range(length))


def _reference(text: str, version: int, level: str, mask: int | None) -> list[list[int]]:
    code = segno.make(text, version=version, error=level, mode="byte", mask=mask, boost_error=False, micro=False)
    return [list(row) for row in code.matrix]


@pytest.mark.parametrize("level", ["L", "M"])
@pytest.mark.parametrize("version", range(1, 26))
def test_is_the_code_of_the_reference(codes: Ask, version: int, level: str) -> None:
    count = "(() => { let n = 0; while (fits(n + 1, version, level)) n += 1; return n; })()"
    room = codes(count, version=version, level=level)
    for length in (room, room // 2):
        text = _text(length, version)
        for mask in (number % 8 for number in range(length, length + MASKS)):
            ours = codes(DRAW, bytes=list(text.encode()), version=version, level=level, mask=mask)
            assert ours == _reference(text, version, level, mask)
    with pytest.raises(segno.DataOverflowError):
        _reference(_text(room + 1, 0), version, level, None)


@pytest.mark.parametrize("version", range(1, 26, 3))
def test_chooses_the_mask_that_reads_best(codes: Ask, version: int) -> None:
    """By the reference's own scores (7.8.3) of the eight finished codes."""
    text = _text(12 * version, version)
    ours = codes("drawCode(new Uint8Array(bytes), version, 'M')", bytes=list(text.encode()), version=version)
    scores = [_score(_reference(text, version, "M", mask)) for mask in range(8)]
    assert _score(ours) == min(scores)


def _score(rows: list[list[int]]) -> int:
    return int(evaluate_mask([bytearray(row) for row in rows], len(rows), len(rows)))


@pytest.mark.parametrize(("length", "size"), [(1, 21), (17, 21), (18, 25), (32, 25), (33, 29), (1273, 117)])
def test_takes_the_smallest_that_holds_the_text(codes: Ask, length: int, size: int) -> None:
    """Capacities in bytes at level L: 17, 32 and 1273 for versions 1, 2 and 25 (ISO/IEC 18004, table 7)."""
    assert len(codes("qrCode(text)", text="a" * length)) == size


def test_says_when_a_text_is_too_long(codes: Ask) -> None:
    assert codes("qrCode(text)", text="a" * 1274) is None
