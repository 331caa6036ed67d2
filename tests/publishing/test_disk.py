"""The zip for a stick is the old one until the new one is whole."""

from pathlib import Path

import pytest

from generator.publishing.disk import pack


def test_where_packing_is_cut_off_the_old_zip_stays_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder, archive = tmp_path / "site", tmp_path / "day.zip"
    folder.mkdir()
    (folder / "index.html").write_text("one")
    pack(folder, archive)
    first = archive.read_bytes()
    (folder / "other.html").write_text("two")

    def cut(path: Path) -> bytes:
        raise OSError("the disk is gone")

    with monkeypatch.context() as patched:
        patched.setattr(Path, "read_bytes", cut)
        with pytest.raises(OSError, match="gone"):
            pack(folder, archive)
    assert archive.read_bytes() == first
    assert sorted(tmp_path.iterdir()) == [archive, folder]
