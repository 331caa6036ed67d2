from pathlib import Path

import pytest

from generator.pipeline.freshness import fingerprint, is_fresh, keep_mark, path_on_host, stamp
from generator.pipeline.order import Order


@pytest.fixture
def order(tmp_path: Path) -> Order:
    shared = tmp_path / "content/shared/words"
    shared.mkdir(parents=True)
    (shared / "words.yml").write_text("hello: {says: Hello}")
    (tmp_path / "content/farms/demo").mkdir(parents=True)
    return Order(tmp_path / "content", tmp_path / "build")


def build(order: Order) -> None:
    order.site.mkdir(parents=True)
    (order.site / "index.html").touch()
    keep_mark(order, fingerprint(order.inputs), "https://farm.example/day/")


def test_what_was_just_built_is_fresh(order: Order) -> None:
    assert not is_fresh(order)
    build(order)
    assert is_fresh(order)
    assert path_on_host(order) == "/day/"


@pytest.mark.parametrize(
    "change",
    [
        lambda order: (order.shared / "words/words.yml").write_text("hello: {says: Good day}"),
        lambda order: (order.shared / "words/words.yml").rename(order.shared / "words/other.yml"),
        lambda order: (order.farm / "farm.yml").touch(),
        lambda order: (order.site / "index.html").unlink(),
        lambda order: order.mark.write_text("[]"),
        lambda order: order.mark.write_text("{"),
    ],
    ids=["a word", "a name", "a new file", "no site", "another mark", "half a mark"],
)
def test_any_change_makes_it_stale(order: Order, change: object) -> None:
    build(order)
    change(order)  # type: ignore[operator]
    assert not is_fresh(order)


def test_the_farm_is_its_own_folder_or_the_demo_or_the_only_one(tmp_path: Path) -> None:
    order = Order(tmp_path, tmp_path / "build")
    assert order.farm == tmp_path / "farms/demo"
    (tmp_path / "farms/hill").mkdir(parents=True)
    assert order.farm == tmp_path / "farms/hill"
    (tmp_path / "farms/demo").mkdir()
    assert order.farm == tmp_path / "farms/demo"
    assert Order(tmp_path, tmp_path, own=Path("elsewhere")).farm == Path("elsewhere")


def test_a_stamp_notices_a_save_and_bears_a_missing_folder(order: Order) -> None:
    before = stamp([order.shared, order.farm / "none"])
    (order.shared / "words/words.yml").write_text("hello: {says: Good morning}")
    assert stamp([order.shared, order.farm / "none"]) != before


def test_a_file_that_goes_while_it_is_read_makes_the_site_stale(order: Order, monkeypatch: pytest.MonkeyPatch) -> None:
    """An editor may be just replacing it; what the reader finds there is told by the reader."""
    build(order)

    def gone(path: Path) -> bytes:
        raise FileNotFoundError(2, "No such file or directory", str(path))

    monkeypatch.setattr(Path, "read_bytes", gone)
    assert not is_fresh(order)
