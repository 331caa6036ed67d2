"""Kept templates: the same pages, and never those of a template, a Jinja or a way of reading that is gone."""

from pathlib import Path

import pytest
from jinja2 import DictLoader, Environment

from generator.rendering.compiled import CompiledTemplates


@pytest.fixture(autouse=True)
def another_process(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(CompiledTemplates, "_known", {})


def fill(template: str, memory: Path | None, **habits: bool) -> str:
    kept = CompiledTemplates(memory, habits)
    return (
        Environment(loader=DictLoader({"page": template}), bytecode_cache=kept, **habits).get_template("page").render()
    )  # type: ignore[arg-type]


def test_what_was_kept_by_another_process_is_used(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert fill("{{ 1 + 1 }}", tmp_path) == "2"
    monkeypatch.setattr(CompiledTemplates, "_known", {})
    monkeypatch.setattr(Environment, "_generate", None)
    assert fill("{{ 1 + 1 }}", tmp_path) == "2"
    with pytest.raises(TypeError):  # this one was not, so it would have to be made
        fill("{{ 1 + 2 }}", tmp_path)


def test_without_a_folder_it_is_kept_while_the_process_lasts(monkeypatch: pytest.MonkeyPatch) -> None:
    assert fill("{{ 2 + 1 }}", None) == "3"
    monkeypatch.setattr(Environment, "_generate", None)
    assert fill("{{ 2 + 1 }}", None) == "3"


def test_a_changed_template_is_read_anew(tmp_path: Path) -> None:
    assert fill("old", tmp_path) == "old"
    assert fill("new", tmp_path) == "new"


def test_another_way_of_reading_is_another_template(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    text = "{% if true %}\nhere{% endif %}"
    assert fill(text, tmp_path, trim_blocks=False) == "\nhere"
    monkeypatch.setattr(CompiledTemplates, "_known", {})
    assert fill(text, tmp_path, trim_blocks=True) == "here"


def test_a_spoiled_file_is_made_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert fill("{{ 3 + 1 }}", tmp_path) == "4"
    (file,) = tmp_path.iterdir()
    file.write_bytes(file.read_bytes()[:40])
    monkeypatch.setattr(CompiledTemplates, "_known", {})
    assert fill("{{ 3 + 1 }}", tmp_path) == "4"
