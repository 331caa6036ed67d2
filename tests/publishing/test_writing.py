import os
from pathlib import Path

from generator.publishing.writing import write_folder


def everything(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_the_folder_holds_exactly_the_files(tmp_path: Path) -> None:
    write_folder(tmp_path, {"a.md": "one", "deep/b.md": "two", "gone/c.md": "three"})
    write_folder(tmp_path, {"a.md": "one", "deep/b.md": "2", "icon": b"\x00"})
    assert everything(tmp_path) == {"a.md": b"one", "deep/b.md": b"2", "icon": b"\x00"}
    assert not (tmp_path / "gone").exists()


def test_a_file_that_is_right_is_not_touched(tmp_path: Path) -> None:
    write_folder(tmp_path, {"a.md": "one", "b.md": "two"})
    os.utime(tmp_path / "a.md", (1, 1))
    os.utime(tmp_path / "b.md", (1, 1))
    write_folder(tmp_path, {"a.md": "one", "b.md": "three"})
    assert (tmp_path / "a.md").stat().st_mtime == 1
    assert (tmp_path / "b.md").stat().st_mtime > 1
