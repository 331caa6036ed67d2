"""The commands that keep generated files in step: `schema` and `words`; and `bench`."""

import json
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.command_line import bench, schema
from generator.pipeline.measuring import Figures, measure_build
from generator.pipeline.order import HERE, Order
from tests.product import product_reading

from .conftest import Run


def test_stale_and_left_over_schemas_are_named_and_mended(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("content", ".vscode"):
        shutil.copytree(HERE / name, tmp_path / name)
    monkeypatch.setattr(schema, "HERE", tmp_path)
    monkeypatch.setattr(schema, "read_library", lambda shared, farm: product_reading())
    run("schema")
    (tmp_path / "content/schemas/shared/units.json").write_text("{}")
    (tmp_path / "content/schemas/shared/old.json").touch()
    answer = run("schema", "--check")
    assert answer.status == 1
    assert answer.err.splitlines() == [
        "content/schemas/shared/old.json: is not up to date",
        "    hint: run `python3 run.py schema`",
        "content/schemas/shared/units.json: is not up to date",
        "    hint: run `python3 run.py schema`",
        "",
        "2 problems.",
    ]
    assert run("schema").out == "2 schema files changed.\n"
    assert run("schema", "--check").status == 0
    assert not (tmp_path / "content/schemas/shared/old.json").exists()


@pytest.fixture
def translated(bakery: Order) -> Order:
    folder = bakery.shared / "translations"
    folder.mkdir()
    header = 'msgid ""\nmsgstr "Content-Type: text/plain; charset=UTF-8\\n"\n\n'
    messages = 'msgid "Mix"\nmsgstr "Mélanger"\n\nmsgid "Zebras cross here"\nmsgstr "Passage"\n'
    (folder / "fr.po").write_text(header + messages)
    return bakery


def test_words_takes_new_messages_in_and_keeps_what_is_translated(translated: Order, run: Run) -> None:
    words = ["--content", translated.content, "--farm", translated.farm]
    answer = run("words", *words)
    assert answer.status == 0
    catalogue = (translated.shared / "translations/fr.po").read_text(encoding="utf-8")
    assert 'msgid "Mix"\nmsgstr "Mélanger"' in catalogue
    assert 'msgid "Mix the dough"\nmsgstr ""' in catalogue
    assert '#~ msgid "Zebras cross here"' in catalogue
    checked = run("words", "--check", *words)
    assert checked.status == 1
    assert checked.out.startswith("fr: 1 of ")
    assert "fr.po: " in checked.err
    assert run("words", *words).status == 0
    assert (translated.shared / "translations/fr.po").read_text(encoding="utf-8") == catalogue


def test_words_tells_the_state_of_the_farms_own_catalogue(translated: Order, run: Run) -> None:
    own = translated.farm / "translations/fr.po"
    own.parent.mkdir()
    own.write_text('msgid "Saturday market"\nmsgstr ""\n', encoding="utf-8")
    checked = run("words", "--check", "--content", translated.content, "--farm", translated.farm)
    assert checked.status == 1
    assert "fr: 0 of 1 messages are translated" in checked.out
    assert f"{own}: 1 messages are missing" in checked.err


def test_words_brings_the_farms_own_catalogue_what_the_shared_one_does_not_say(translated: Order, run: Run) -> None:
    words = ["--content", translated.content, "--farm", translated.farm]
    shared, own = (layer / "translations/fr.po" for layer in (translated.shared, translated.farm))
    own.parent.mkdir()
    own.write_text('msgid "Old market"\nmsgstr "Vieux marché"\n', encoding="utf-8")
    assert run("words", *words).status == 0
    catalogue = own.read_text(encoding="utf-8")
    assert '#, fuzzy\nmsgid "Saturday market"\nmsgstr "Vieux marché"\n' in catalogue
    assert 'msgid "Mix the dough"\nmsgstr ""' in catalogue
    assert 'msgid "Mix"\n' in shared.read_text(encoding="utf-8")
    assert 'msgid "Mix"\n' not in catalogue
    own.write_text('msgid "Mix"\nmsgstr "Pétrir"\n', encoding="utf-8")
    assert run("words", *words).status == 0
    assert 'msgid "Mix"\nmsgstr "Pétrir"\n' in own.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("broken", "line"), [(b'msgid "Mix"\nmsgstr "dos\n', 2), (b'# \xe9\nmsgid "Mix"\nmsgstr "dos"\n', 1)]
)
def test_words_leaves_all_files_alone_where_one_is_torn(translated: Order, run: Run, broken: bytes, line: int) -> None:
    folder = translated.shared / "translations"
    (folder / "gd.po").write_bytes(broken)
    before = {file.name: file.read_bytes() for file in folder.iterdir()}
    answer = run("words", "--content", translated.content, "--farm", translated.farm)
    assert answer.status == 1
    assert f"gd.po:{line}: " in answer.err
    assert {file.name: file.read_bytes() for file in folder.iterdir()} == before


def measured_once() -> Callable[[Order], Figures]:
    """Builds for the first who asks; what is printed beside its figures needs no second build."""
    kept: Figures = {}

    def measured(order: Order) -> Figures:
        kept.update({} if kept else measure_build(order))
        return dict(kept)

    return measured


def test_bench_prints_each_figure_beside_the_kept_one(
    bakery: Order, run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bench, "KEPT", tmp_path / "kept.json")
    monkeypatch.setattr(bench, "measure_phone", lambda site: {"A tap, ms": 12.5})
    monkeypatch.setattr(bench, "measure_build", measured_once())
    words = ["bench", "--content", bakery.content, "--farm", bakery.farm]
    assert run(*words, "--keep").status == 0
    kept = json.loads((tmp_path / "kept.json").read_text(encoding="utf-8"))
    lines = {line[:32].strip(): line[32:].split() for line in run(*words).out.splitlines()[1:]}
    assert {"The whole build, s", "A first copy without papers, kB", "Pages"} <= set(kept)
    assert lines["Pages"] == [f"{kept['Pages']:g}", f"{kept['Pages']:g}", "1.00"]
    assert lines["A tap, ms"] == ["12.5", "12.5", "1.00"]
