"""Which files of a folder are taken for records."""

from pathlib import Path

from generator.pipeline.recording import _each
from generator.problems import Problem


def test_a_folder_gives_what_phones_send_under_either_ending(tmp_path: Path) -> None:
    for name in (
        "record-2026-07-18-1-ana.json",
        "record-2026-07-18-1-ben.txt",
        "signed-2026-07-18-ben.txt",
        "notes.txt",
    ):
        (tmp_path / name).touch()
    problems = list[Problem]()
    found = [path.name for path in _each([tmp_path], problems)]
    assert found == ["record-2026-07-18-1-ana.json", "record-2026-07-18-1-ben.txt", "signed-2026-07-18-ben.txt"]
    assert problems == []
    empty = tmp_path / "empty"
    empty.mkdir()
    assert list(_each([empty], problems)) == []
    assert [problem.fault for problem in problems] == ["no record in this folder"]
