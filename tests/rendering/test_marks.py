"""Every mark that templates leave in pages for programs or styles is looked up by one; a slip does nothing at all."""

from __future__ import annotations

import re

from generator.pipeline.order import GENERATOR, OVERRIDES

_MARK = re.compile(r"(?<![\w-])data-([a-z][a-z0-9-]*)(?=[\s=>}\"])")
_COMPOSED = re.compile(r"\[data-([a-z-]*)\$\{\w+\}\]")
_LITERAL = re.compile(r"\"([a-z-]+)\"")


def _texts(*kinds: str) -> list[str]:
    files = sorted(path for root in (OVERRIDES, GENERATOR) for path in root.rglob("*") if path.suffix in kinds)
    return [path.read_text(encoding="utf-8") for path in files]


def looked_up() -> set[str]:
    """Marks as programs, styles and the generator write them, also those put together of two parts."""
    found: set[str] = set()
    for text in _texts(".js", ".css", ".py"):
        found |= set(re.findall(r"data-([a-z][a-z0-9-]*)", text))
        words = re.findall(r"(?:dataset\.|[{,] ?)([a-z][A-Za-z]*)", text)
        found |= {re.sub(r"[A-Z]", lambda letter: f"-{letter[0].lower()}", word) for word in words}
        found |= {f"{begin}{rest}" for begin in _COMPOSED.findall(text) for rest in _LITERAL.findall(text)}
    return found


def test_no_mark_is_left_for_nothing() -> None:
    left = {mark for text in _texts(".jinja", ".html") for mark in _MARK.findall(text)}
    assert len(left) > 100
    assert left - looked_up() == set()
    assert "plan-changed" not in looked_up(), "a slip of that kind was not seen for long"
