"""No word of the interface stands about unused. (That none is missing is found when pages are made.)"""

import re

from generator.pipeline.order import GENERATOR, OVERRIDES
from tests.product import product_library

WORDS = product_library().words
PROGRAM = "\n".join(
    path.read_text(encoding="utf-8")
    for root in (GENERATOR, OVERRIDES)
    for path in sorted(root.rglob("*"))
    if path.suffix in {".py", ".js", ".html", ".jinja", ".typ"}
)
WRITTEN = set(re.findall(r"[a-z][a-z0-9_]*", PROGRAM))
COMPOSED = set(re.findall(r"[\"'`]([a-z][a-z0-9_]*_)(?:[\"'`]|\{|\$\{)", PROGRAM))
"""What ids made of two parts begin with, such as f"title_{name}"."""


HANDED_OVER = ("phone_", "frame_", "logging_", "planning_", "teaching_")
"""All words that begin so go to programs, which ask for them by the rest of their ids."""
BEGUN = tuple(COMPOSED - set(HANDED_OVER))


def is_spoken(identifier: str) -> bool:
    names = {identifier, *(identifier.removeprefix(mark) for mark in HANDED_OVER)}
    return bool(names & WRITTEN) or any(name.startswith(BEGUN) for name in names)


def test_every_word_is_spoken() -> None:
    unused = [identifier for identifier in WORDS if not is_spoken(identifier)]
    assert unused == [], "no page asks for them: take them out of content/shared/words"


def test_a_word_that_nothing_asks_for_is_told_apart() -> None:
    assert not is_spoken("a_word_of_no_page")
