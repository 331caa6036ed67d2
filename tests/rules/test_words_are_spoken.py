"""No word of the interface stands about unused. (That none is missing is found when pages are made.)"""

import re

import pytest

from generator.pipeline.order import GENERATOR, HERE, OVERRIDES
from generator.reading import read_library

WORDS = read_library(HERE / "content/shared", HERE / "content/farms/demo").library.words
PROGRAM = "\n".join(
    path.read_text(encoding="utf-8")
    for root in (GENERATOR, OVERRIDES)
    for path in sorted(root.rglob("*"))
    if path.suffix in {".py", ".js", ".html", ".jinja", ".typ"}
)
WRITTEN = set(re.findall(r"[a-z][a-z0-9_]*", PROGRAM))
COMPOSED = set(re.findall(r"[\"'`]([a-z][a-z0-9_]*_)(?:[\"'`]|\{|\$\{)", PROGRAM))
"""What ids made of two parts begin with, such as f"title_{name}"."""


def is_spoken(identifier: str) -> bool:
    names = {identifier, identifier.removeprefix("phone_"), identifier.removeprefix("frame_")}
    begun = tuple(COMPOSED - {"phone_", "frame_"})
    return bool(names & WRITTEN) or any(name.startswith(begun) for name in names)


@pytest.mark.parametrize("identifier", WORDS)
def test_a_word_is_spoken(identifier: str) -> None:
    assert is_spoken(identifier), "no page asks for it: take it out of content/shared/words"


def test_a_word_that_nothing_asks_for_is_told_apart() -> None:
    assert not is_spoken("a_word_of_no_page")
