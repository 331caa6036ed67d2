"""Many farms by one command: each as if it were built alone, and none hindered by another's faults."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest

from generator.pipeline.farms import build_farms, orders_of
from generator.pipeline.order import Order
from generator.problems import ProblemsFound
from tests.command_line.conftest import Run, run

__all__ = ["run"]


@pytest.fixture
def farms(bakery: Order) -> list[Path]:
    """The bakery as it is, and one with a name of its own."""
    south, north = (Path(shutil.copytree(bakery.farm, bakery.content / name)) for name in ("south", "north"))
    file = north / "farm" / "farm.yml"
    own = file.read_text()
    assert "The Invented Hearth" in own
    file.write_text(own.replace("The Invented Hearth", "Oven of the North"))
    return [north, south]


@pytest.fixture
def into(ready_bakery: Order, tmp_path: Path) -> Path:
    """Where they are built; what all can share was set for the bakery before."""
    folder, shared = tmp_path / "many", tmp_path / "many" / "shared"
    shutil.copytree(ready_bakery.papers, shared / "papers")
    shutil.copytree(ready_bakery.templates, shared / "templates")
    shutil.copy(ready_bakery.memory, shared)
    return folder


def _content(site: Path) -> dict[str, bytes]:
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in site.rglob("*") if path.is_file()}


def test_each_is_as_if_built_alone_and_faults_stay_at_home(
    farms: list[Path], bakery: Order, ready_bakery: Order, run: Run, into: Path
) -> None:
    words = ["--content", bakery.content, "--into", into]
    bad = Path(shutil.copytree(farms[0], bakery.content / "bad"))
    (bad / "farm" / "farm.yml").write_text("farm: {color: red}\n")
    answer = run("farms", *farms, bad, *words)
    assert answer.status == 1
    assert f"{bad}: not built\n" in answer.out
    assert answer.out.endswith("2 farms built, 1 not.\n")
    assert "color" in answer.err
    assert not (into / "bad" / "site").exists()
    assert {path.name for path in (into / "shared").iterdir()} == {"looks", "papers", "templates", "units.json"}
    assert _content(into / "south" / "site") == _content(ready_bakery.site), "this was built alone"
    assert _content(into / "north" / "site") != _content(into / "south" / "site")

    first = (into / "north" / "site" / "index.html").stat().st_mtime_ns
    answer = run("farms", *farms, *words)
    assert (answer.status, answer.err) == (0, "")
    assert answer.out.endswith("2 farms built.\n")
    assert (into / "north" / "site" / "index.html").stat().st_mtime_ns == first, "built again with nothing changed"


def test_a_folder_that_cannot_be_written_stays_its_own_farms_fault(
    farms: list[Path], bakery: Order, run: Run, into: Path
) -> None:
    (into / "north").touch()
    answer = run("farms", *farms, "--content", bakery.content, "--into", into)
    assert answer.status == 1
    assert f"{farms[0]}: not built\n" in answer.out
    assert answer.out.endswith("1 farm built, 1 not.\n")
    assert answer.err.splitlines() == [
        f"{into}/north/docs: not a directory",
        "    hint: see that the folder can be written and has room",
    ]
    assert (into / "south/site/index.html").is_file()


def test_what_they_share_is_kept_once(farms: list[Path], bakery: Order, tmp_path: Path) -> None:
    orders = orders_of(farms, bakery.content, tmp_path / "many")
    assert {order.papers for order in orders} == {tmp_path / "many" / "shared" / "papers"}
    assert {order.memory for order in orders} == {tmp_path / "many" / "shared" / "units.json"}


def test_folders_that_cannot_be_meant(farms: list[Path], bakery: Order, tmp_path: Path) -> None:
    twin = Path(shutil.copytree(farms[0], tmp_path / "twin" / "north"))
    shared = Path(shutil.copytree(farms[0], tmp_path / "shared"))
    with pytest.raises(ProblemsFound) as found:
        orders_of([farms[0], twin, tmp_path / "none", shared], bakery.content, tmp_path / "many")
    assert str(found.value).splitlines() == [
        f"{tmp_path / 'none'}: is no folder",
        "    hint: name farms' folders",
        f"{shared}: has the name of {tmp_path / 'many' / 'shared'}",
        "    hint: give the folder another name",
        f"{twin}: has the name of {farms[0]}",
        "    hint: give the folder another name",
    ]


def dies(order: Order) -> None:
    """As a process whose memory the system needs for another."""
    os._exit(9)


def test_a_process_that_was_ended_from_outside_is_its_own_farms_fault(
    farms: list[Path], bakery: Order, into: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("generator.pipeline.farms._build_one", dies)
    built = list(build_farms(orders_of(farms, bakery.content, into)))
    assert sorted(str(problem) for each in built for problem in each.problems) == [
        f"{farm}: the process that did it was ended from outside\n    hint: give it 0.5 GB of memory; try again"
        for farm in farms
    ]
