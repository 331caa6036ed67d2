"""Whatever is in a file: either it is read, or problems are reported. Never anything else."""

import contextlib
from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as some

from generator.problems import Problem, ProblemsFound
from generator.reading import composer
from generator.reading.composer import compose
from generator.reading.files import KINDS
from generator.reading.layer import read_layer
from generator.reading.shape import give_shape
from tests.repeating import TIMES

LOADERS = [pytest.param(yaml.SafeLoader, id="python")]
if hasattr(yaml, "CSafeLoader"):
    LOADERS.append(pytest.param(yaml.CSafeLoader, id="c"))

WORDS = [
    "title",
    "says",
    "source",
    "id",
    "a",
    "true",
    "7",
    "1.5",
    "",
    "no",
    "~remove",
    "{x",
    "é",
    "\u2028",
    "😀",
    '"\\ud800": ',
]
SIGNS = [
    ": ",
    ":",
    "- ",
    "\n",
    "\n  ",
    "\n    ",
    "[",
    "]",
    "{",
    "}",
    ", ",
    '"',
    "'",
    "|\n",
    ">-\n",
    "#",
    "&a ",
    "*a",
    "!b ",
]
pieces = some.lists(
    some.sampled_from(WORDS + SIGNS + ["---\n", "...\n", "%YAML 1.1\n", "\t", "\r", "? ", "\\"]), max_size=25
)
values = some.recursive(
    some.sampled_from(["", "x", "5", "1.5", "true", "'{a'", "arithmetic", "~remove", "x" * 50]),
    lambda inner: some.one_of(
        some.lists(inner, max_size=3).map(lambda items: f"[{', '.join(items)}]"),
        some.dictionaries(
            some.sampled_from([*WORDS[:5], "default", "steps", "range", "values"]), inner, max_size=4
        ).map(lambda pairs: "{" + ", ".join(f"{key}: {value}" for key, value in pairs.items()) + "}"),
    ),
    max_leaves=8,
)


@pytest.mark.parametrize("loader", LOADERS)
@given(text=pieces.map("".join))
@settings(max_examples=100 * TIMES, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
def test_pieces_of_yaml(loader: type, text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(composer, "LOADER", loader)
    try:
        compose(text, "a.yml", "shared")
    except ProblemsFound as found:
        str(found).encode("utf-8")


@given(
    content=some.one_of(
        some.binary(max_size=60), some.text(max_size=40).map(lambda text: text.encode("utf-8", "replace"))
    )
)
@settings(max_examples=60 * TIMES, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
def test_bytes(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "terms").mkdir(exist_ok=True)
    (tmp_path / "terms" / "a.yml").write_bytes(content)
    problems: list[Problem] = []
    read_layer(tmp_path, "shared", problems)
    for problem in problems:
        str(problem).encode("utf-8")


@given(kind=some.sampled_from(KINDS), name=some.sampled_from(["a", "B", "1", "a-b"]), value=values)
@settings(max_examples=100 * TIMES, deadline=None)
def test_entries_of_any_shape(kind: str, name: str, value: str) -> None:
    with contextlib.suppress(ProblemsFound):
        tree = compose(f"{name}: {value}", "a.yml", "shared")
        assert tree is not None and isinstance(tree.value, dict)
        entries = {each: tree.value if each == kind else {} for each in KINDS}
        try:
            give_shape(entries, entries)
        except ProblemsFound as found:
            assert all(problem.place.line == 1 and problem.hint for problem in found.problems)
            raise


@pytest.mark.parametrize("loader", LOADERS)
def test_both_parsers_read_the_same(loader: type, monkeypatch: pytest.MonkeyPatch) -> None:
    texts = [
        file.read_text(encoding="utf-8") for file in sorted((Path(__file__).parents[1] / "other_trade").rglob("*.yml"))
    ]
    expected = [compose(text, "a.yml", "shared") for text in texts]
    monkeypatch.setattr(composer, "LOADER", loader)
    assert [compose(text, "a.yml", "shared") for text in texts] == expected
