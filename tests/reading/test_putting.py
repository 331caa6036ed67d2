"""Putting a file in the place of another is done wholly or not at all."""

import os
from pathlib import Path

import pytest

from generator.reading.putting import put


def test_the_new_file_takes_the_place_of_the_old_one(tmp_path: Path) -> None:
    file = tmp_path / "deep/a.yml"
    put(file, b"one")
    put(file, b"two")
    assert file.read_bytes() == b"two"
    assert list(file.parent.iterdir()) == [file]


@pytest.mark.skipif(os.name == "nt", reason="links and permissions are those of POSIX")
def test_a_link_and_permissions_stay(tmp_path: Path) -> None:
    file, link = tmp_path / "a.yml", tmp_path / "link.yml"
    put(file, b"one")
    file.chmod(0o600)
    link.symlink_to(file)
    put(link, b"two")
    assert link.is_symlink()
    assert file.read_bytes() == b"two"
    assert file.stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize("step", ["write_bytes", "replace"])
def test_where_it_is_cut_off_the_old_one_stays_alone(
    step: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "a.yml"
    put(file, b"one")

    def cut(path: Path, given: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, step, cut)
    with pytest.raises(KeyboardInterrupt):
        put(file, b"two")
    assert file.read_bytes() == b"one"
    assert list(tmp_path.iterdir()) == [file]
