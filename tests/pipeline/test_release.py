from datetime import UTC, datetime
from pathlib import Path

import pytest

from generator.pipeline.order import CHANGES
from generator.pipeline.release import Release, read_release
from generator.problems import ProblemsFound


def written(folder: Path, text: str) -> Path:
    path = folder / "CHANGELOG.md"
    path.write_text(text, encoding="utf-8")
    return path


def test_the_newest_version_stands_first(tmp_path: Path) -> None:
    changes = written(tmp_path, "# Changes\n\n## 1.2.0 · 2026-05-31\n\n## 1.1.0 · 2026-01-02\n")
    assert read_release(changes) == Release("1.2.0", datetime(2026, 5, 31, tzinfo=UTC))


@pytest.mark.parametrize("text", ["# Changes\n", "## 1.0.0\n", "## 1.0.0 · 2026-02-30\n", ""])
def test_without_a_version_and_its_day_it_says_what_to_write(tmp_path: Path, text: str) -> None:
    with pytest.raises(ProblemsFound) as found:
        read_release(written(tmp_path, text))
    assert str(found.value) == (
        "CHANGELOG.md: no version with its day\n    hint: write a heading such as `## 1.2.0 · 2026-05-31`"
    )


def test_each_of_our_versions_begins_with_changed_numbers() -> None:
    _, *versions = CHANGES.read_text(encoding="utf-8").split("\n## ")
    assert versions
    for version in versions:
        assert version.index("**Changed numbers**") < version.find("\n- ") or "\n- " not in version
