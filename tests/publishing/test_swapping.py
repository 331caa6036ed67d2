from pathlib import Path

import pytest

from generator.publishing.swapping import successor


def folder_with(path: Path, text: str) -> Path:
    path.mkdir()
    (path / "page").write_text(text)
    return path


def test_a_whole_successor_takes_the_place(tmp_path: Path) -> None:
    site = folder_with(tmp_path / "site", "old")
    (site / "left over").touch()
    with successor(site) as new:
        (new / "page").write_text("new")
        assert (site / "page").read_text() == "old"
    assert [path.name for path in tmp_path.rglob("*")] == ["site", "page"]
    assert (site / "page").read_text() == "new"


@pytest.mark.parametrize("fault", [ValueError, KeyboardInterrupt])
def test_after_a_fault_the_old_one_is_still_there(tmp_path: Path, fault: type[BaseException]) -> None:
    site = folder_with(tmp_path / "site", "old")
    with pytest.raises(fault), successor(site) as new:
        (new / "page").write_text("half")
        raise fault
    assert (site / "page").read_text() == "old"
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_a_swap_cut_between_its_renames_is_mended(tmp_path: Path) -> None:
    folder_with(tmp_path / "site.old", "old")
    folder_with(tmp_path / "site.new", "half")
    with pytest.raises(ValueError), successor(tmp_path / "site"):
        raise ValueError
    assert (tmp_path / "site" / "page").read_text() == "old"
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_the_first_site_needs_no_old_one(tmp_path: Path) -> None:
    with successor(tmp_path / "build" / "site") as new:
        (new / "page").touch()
    assert (tmp_path / "build" / "site" / "page").is_file()
