"""Random rounds until a time is up. Each has its number as its seed, so that a failure can be had again."""

from __future__ import annotations

import os
import random
import time
from collections.abc import Iterator
from contextlib import contextmanager

SECONDS = float(os.environ.get("FUZZ_SECONDS", "1"))
"""For each test. `FUZZ_SECONDS=600 python3 run.py test tests/fuzz` looks longer."""
FIRST = int(os.environ.get("FUZZ_FIRST", "0"))
HANG = 1.0


def rounds(least: int = 1) -> Iterator[random.Random]:
    """Chances to make something up by; where one fails, `FUZZ_FIRST` with the number told begins with it."""
    end, number = time.monotonic() + SECONDS, FIRST
    while number < FIRST + least or time.monotonic() < end:
        try:
            yield random.Random(number)
        except GeneratorExit:
            print(f"FUZZ_FIRST={number}")
            raise
        number += 1


@contextmanager
def no_hang() -> Iterator[None]:
    """Fails where the block worked for more than a second, whatever else the machine does meanwhile."""
    start = time.process_time()
    yield
    assert time.process_time() - start < HANG


def mutate(chance: random.Random, text: str, pieces: list[str]) -> str:
    """The text with a few places cut, doubled, swapped or filled with pieces."""
    for _ in range(chance.randrange(1, 6)):
        one, other = sorted(chance.randrange(len(text) + 1) for _ in range(2))
        other = min(other, one + chance.choice([1, 3, 40]))
        part = text[one:other]
        text = text[:one] + chance.choice(["", part * 2, part[::-1], chance.choice(pieces), *pieces[:3]]) + text[other:]
    return text
