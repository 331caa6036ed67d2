"""Every word that templates, the frame and programs ask for is there; `tests/rules` finds those that none asks for."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

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


@pytest.mark.parametrize(
    ("module", "mark"), [("log_words", "logging"), ("plan_words", "planning"), ("teaching_words", "teaching")]
)
def test_what_programs_tell_is_there(module: str, mark: str) -> None:
    """Each program that tells takes `tell` from one module of words, or asks that module for it by name."""
    programs = [path.read_text(encoding="utf-8") for path in sorted((OVERRIDES / "phone").glob("*.js"))]
    telling = [text for text in programs if re.search(rf"tell\b[^;]*\}} from \"\./{module}\.js\"", text)]
    asked = {name for text in telling for name in re.findall(r"(?<!\w)tell\(\s*\"(\w+)\"", text)}
    assert len(asked) > 10
    assert {f"{mark}_{name}" for name in asked if not name.endswith("_")} - known() == set()


def test_the_frame_finds_its_words() -> None:
    asked = set(re.findall(r"words\.(\w+)", _text(OVERRIDES / "partials", OVERRIDES / "main.html")))
    assert {f"frame_{name}" for name in asked} - known() == set()


def test_templates_find_their_words() -> None:
    asked = set(re.findall(r"word\(\"(\w+)\"[,)]", _text(GENERATOR / "rendering/templates")))
    assert len(asked) > 60
    assert asked - known() == set()
