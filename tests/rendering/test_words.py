"""Every word that templates, the frame and programs ask for is there, and none is there for nothing."""

from __future__ import annotations

import re
from pathlib import Path

from generator.pipeline.order import GENERATOR, HERE, OVERRIDES

WORDS = HERE / "content/shared/words"


def known() -> set[str]:
    lines = "\n".join(file.read_text(encoding="utf-8") for file in WORDS.glob("*.yml"))
    return set(re.findall(r"^(\w+):", lines, re.MULTILINE))


def _text(*roots: Path) -> str:
    kinds = {".jinja", ".html", ".js", ".py"}
    files = [path for root in roots for path in sorted(root.rglob("*")) if path.suffix in kinds]
    return "\n".join(path.read_text(encoding="utf-8") for path in files)


def test_programs_find_their_words() -> None:
    asked = set(re.findall(r"(?<![\w.])say\(\s*\"(\w+)\"", _text(OVERRIDES / "phone")))
    assert len(asked) > 30
    assert {f"phone_{name}" for name in asked if not name.endswith("_")} - known() == set()


def test_the_frame_finds_its_words() -> None:
    asked = set(re.findall(r"words\.(\w+)", _text(OVERRIDES / "partials", OVERRIDES / "main.html")))
    assert {f"frame_{name}" for name in asked} - known() == set()


def test_templates_find_their_words() -> None:
    asked = set(re.findall(r"word\(\"(\w+)\"[,)]", _text(GENERATOR / "rendering/templates")))
    assert len(asked) > 60
    assert asked - known() == set()
