"""Rules of the house that no tool knows."""

import ast
import re
from pathlib import Path

import pytest

from generator.pipeline.order import GENERATOR, HERE, OVERRIDES, SETTINGS

TRADE = (
    "bird chicken poultry hen broiler turkey duck goose rabbit scald pluck eviscerat chill ice kill slaughter butcher "
    "bleed blood carcass feather offal giblet cone burner propane meat loaf loaves dough bake bakery oven yeast"
)
"""The words of the farm's trade, and of the bakery's that the tests bring along."""
EVERYDAY = re.compile(r"(?i)cone-to-cooler|cone to cooler|killed browser|browser is killed|can kill or maim")
"""The product's own name, and what happens to browsers."""
VAGUE = {"utils", "util", "helpers", "helper", "common", "core", "manager", "misc", "tools"}
LONGEST_FUNCTION = 40
SOURCES = sorted(GENERATOR.rglob("*.py"))
WRITTEN = [
    path
    for root in (GENERATOR, OVERRIDES)
    for path in sorted(root.rglob("*"))
    if path.suffix in {".py", ".js", ".jinja", ".html", ".css", ".svg"}
]


@pytest.mark.parametrize("path", [*WRITTEN, SETTINGS], ids=lambda path: path.relative_to(HERE).as_posix())
def test_the_program_knows_no_trade(path: Path) -> None:
    text = EVERYDAY.sub("", path.read_text(encoding="utf-8"))
    words = "|".join(TRADE.split())
    found = re.findall(rf"(?i)(?<![a-z])(?:{words})(?:s|ed|er|ing|ion|ioning)?(?![a-z])", text)
    assert found == []


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.relative_to(HERE).as_posix())
def test_functions_are_short(path: Path) -> None:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef):
            length = (node.end_lineno or 0) - node.lineno + 1
            assert length <= LONGEST_FUNCTION, f"{node.name} has {length} lines"


def test_names_say_what_lives_there() -> None:
    names = {part for path in WRITTEN for part in path.relative_to(HERE).with_suffix("").parts}
    assert names.isdisjoint(VAGUE)


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.relative_to(HERE).as_posix())
def test_each_module_begins_with_what_it_is_for(path: Path) -> None:
    assert ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))
