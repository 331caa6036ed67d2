"""Rules of the house that no tool knows."""

import ast
import re
from functools import cache

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

PROGRAMS = [path for path in WRITTEN if path.suffix == ".js"]
COMMENT = re.compile(r"\s*(?://|/\*(?!.*\*/ (?:const|let) )|\*|$)")
FUNCTION = re.compile(r"(?:\bfunction\b.*|=> )\{$|^\s+(?!(?:if|for|while|switch|catch)\b)(?:async )?\w+\(.*\) \{$")
IMPORT = re.compile(r'^(?:import|export) .*? from "\./(\w+\.js)";$', re.MULTILINE)


@cache
def trees() -> dict[str, ast.Module]:
    return {path.relative_to(HERE).as_posix(): ast.parse(path.read_text(encoding="utf-8")) for path in SOURCES}


def words_of_the_trade(text: str) -> list[str]:
    words = "|".join(TRADE.split())
    return re.findall(rf"(?i)(?<![a-z])(?:{words})(?:s|ed|er|ing|ion|ioning)?(?![a-z])", EVERYDAY.sub("", text))


def test_the_program_knows_no_trade() -> None:
    found = {path: words_of_the_trade(path.read_text(encoding="utf-8")) for path in (*WRITTEN, SETTINGS)}
    assert {path.relative_to(HERE).as_posix(): words for path, words in found.items() if words} == {}
    assert words_of_the_trade("Chill the birds; killed browsers are none. Ovens!") == ["Chill", "birds", "Ovens"]


def test_functions_are_short() -> None:
    lengths = {
        f"{name}:{node.lineno} {node.name}": (node.end_lineno or 0) - node.lineno + 1
        for name, tree in trees().items()
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    }
    assert len(lengths) > 1000
    assert {name: length for name, length in lengths.items() if length > LONGEST_FUNCTION} == {}


def test_old_phones_can_read_the_programs() -> None:
    """A pattern that looks behind stops a whole program on iOS before 16.4 (WebKit's notes on Safari 16.4)."""
    assert [path.name for path in PROGRAMS if re.search(r"\(\?<[=!]", path.read_text(encoding="utf-8"))] == []
    assert len(PROGRAMS) > 100


def test_names_say_what_lives_there() -> None:
    names = {part for path in WRITTEN for part in path.relative_to(HERE).with_suffix("").parts}
    assert names.isdisjoint(VAGUE)


def test_each_module_begins_with_what_it_is_for() -> None:
    assert [name for name, tree in trees().items() if not ast.get_docstring(tree)] == []


def test_no_text_of_a_program_goes_over_lines() -> None:
    """Margins are taken out of programs, and would be missed there."""
    lines = ((path.name, line) for path in PROGRAMS for line in path.read_text(encoding="utf-8").splitlines())
    assert len(PROGRAMS) > 100
    assert [found for found in lines if found[1].replace("\\`", "").count("`") % 2] == []


def own_lines(program: str) -> dict[str, int]:
    """How long each function is without comments and without the functions in it, by where it begins."""
    lengths: dict[str, int] = {}
    around: list[tuple[int, str]] = []
    for number, line in enumerate(program.splitlines(), 1):
        margin = len(line) - len(line.lstrip())
        if COMMENT.match(line):
            continue
        if FUNCTION.search(line):
            around.append((margin, f"{number} {line.strip()}"))
            lengths[around[-1][1]] = 0
        if around:
            lengths[around[-1][1]] += 1
        if around and margin == around[-1][0] and line.lstrip().startswith("}"):
            around.pop()
    assert around == []
    return lengths


def test_functions_of_programs_are_short() -> None:
    """Those that share what is theirs alone stand within one another."""
    lengths = {
        f"{path.name}: {where}": length
        for path in PROGRAMS
        for where, length in own_lines(path.read_text(encoding="utf-8")).items()
    }
    assert len(lengths) > 700
    assert {name: length for name, length in lengths.items() if length > LONGEST_FUNCTION} == {}
    example = "function f() {\n  const g = () => {\n    return 1;\n  };\n  // Why.\n  return g;\n}\n"
    assert own_lines(example) == {"1 function f() {": 3, "2 const g = () => {": 3}


def test_programs_do_not_import_each_other_in_a_circle() -> None:
    imports = {path.name: set(IMPORT.findall(path.read_text(encoding="utf-8"))) for path in PROGRAMS}
    assert sum(map(len, imports.values())) > 300
    while ready := {name for name, wanted in imports.items() if not wanted & imports.keys()}:
        imports = {name: wanted for name, wanted in imports.items() if name not in ready}
    assert imports == {}
