"""What all tests share: the demonstration site built once a run, and what needs it last, browsers at the very end."""

from __future__ import annotations

import gc
import os
import shutil
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from xdist.remote import Producer
from xdist.scheduler import LoadScopeScheduling

from generator.pipeline.order import HERE, Order

ROOT = HERE


IN_BROWSERS = ("browser", "engines")


def pytest_ignore_collect(collection_path: Path, config: pytest.Config) -> bool | None:
    """What is not to run need not be read."""
    return True if collection_path.name in IN_BROWSERS and config.option.markexpr == "not browser" else None


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    in_browsers = {item for item in items if set(IN_BROWSERS) & set(item.path.parts)}
    for item in items:
        if item in in_browsers or "demo" in getattr(item, "fixturenames", ()):
            item.add_marker("browser")
    items.sort(key=lambda item: (item in in_browsers, item.get_closest_marker("browser") is not None))


def pytest_collection_finish(session: pytest.Session) -> None:
    """All that was collected stays: to look at it again and again for what can go takes a tenth of the time."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(50_000, 20, 50)


class Sharing(LoadScopeScheduling):
    """What a file of tests prepares is prepared once; a test in a browser goes to whichever process is free.

    The groups that xdist has for this (`loadgroup`) are without effect under pytest 9.
    """

    def _split_scope(self, nodeid: str) -> str:
        return nodeid if nodeid.split("/")[1] in IN_BROWSERS else nodeid.partition("::")[0]


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Producer) -> Sharing:
    return Sharing(config, log)


@pytest.fixture(scope="session")
def built_once(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str, Order], Order]:
    """Builds an order the first time its name is asked for, whichever of the parallel test processes asks first."""
    base = tmp_path_factory.getbasetemp()
    shared = base.parent if "PYTEST_XDIST_WORKER" in os.environ else base

    def build_once(name: str, order: Order) -> Order:
        from generator.pipeline.story import build

        done, taken = shared / f"{name}.done", shared / f"{name}.taken"
        try:
            os.close(os.open(taken, os.O_CREAT | os.O_EXCL))
        except FileExistsError:
            _wait_for(done)
        else:
            try:
                build(order, say=lambda step: None)
                done.write_text("whole")
            except BaseException as fault:
                done.write_text(str(fault))
                raise
        if (state := done.read_text()) != "whole":
            pytest.fail(f"the site could not be built:\n{state}")
        return order

    return lambda name, order: build_once(name, Order(order.content, shared / name, order.own))


@pytest.fixture(scope="session")
def demo(built_once: Callable[[str, Order], Order]) -> Order:
    """The demonstration farm's site, finished; `demo.site` is its folder. Do not change it: copy it."""
    return built_once("demo", Order(ROOT / "content", Path()))


def _wait_for(file: Path) -> None:
    end = time.monotonic() + 120
    while not file.exists():
        assert time.monotonic() < end, "the other test process did not finish the site"
        time.sleep(0.1)
    while not file.read_text():
        time.sleep(0.01)


@pytest.fixture(scope="session")
def bakery_content(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The content of another trade, with the interface's words but a name of its own. Do not change it: copy it."""
    content = Path(shutil.copytree(ROOT / "tests/other_trade", tmp_path_factory.mktemp("bakery") / "content"))
    words = Path(shutil.copytree(ROOT / "content/shared/words", content / "shared/words"))
    names = {"site_name": "Night Oven", "site_short_name": "Oven", "site_description": "A bakery's night in lists."}
    lines = [f'{name}: {{says: "{text}"}}' for name, text in names.items()]
    (words / "site.yml").write_text("\n".join(lines), encoding="utf-8")
    return content


@pytest.fixture(scope="session")
def ready_bakery(built_once: Callable[[str, Order], Order], bakery_content: Path) -> Order:
    """The bakery's site, built once a run. Do not change it."""
    return built_once("bakery", Order(bakery_content, Path(), own=bakery_content / "bakery"))


@pytest.fixture
def bakery(bakery_content: Path, ready_bakery: Order, tmp_path: Path) -> Order:
    """An order for the bakery's site on a copy of its content, to break as a test likes; `build` is its folder.

    Papers that were set once are remembered there, as on anybody's machine; a test that wants none goes elsewhere.
    """
    content = Path(shutil.copytree(bakery_content, tmp_path / "content"))
    order = Order(content, tmp_path / "build", own=content / "bakery")
    shutil.copytree(ready_bakery.papers, order.papers)
    shutil.copy(ready_bakery.memory, order.memory)
    return order


@pytest.fixture
def built_bakery(bakery: Order, ready_bakery: Order) -> Order:
    """The same with its site built."""
    shutil.copytree(ready_bakery.into, bakery.into, dirs_exist_ok=True)
    return bakery
