"""The figures of growth are about what they say: so many procedures, so many farms."""

from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest

from generator.pipeline import measuring_many
from generator.pipeline.farms import Built
from generator.pipeline.order import Order


def build_farms(orders: Sequence[Order]) -> Iterator[Built]:
    """Stands in for the builder of farms, which has tests of its own."""
    for order in orders:
        assert order.farm.is_dir()
        order.into.mkdir(parents=True)
        yield Built(order, 1)


def test_so_many_procedures_and_farms_are_made(bakery: Order, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name, number in (("FEW", 4), ("MANY", 7), ("SOME_FARMS", 1), ("MORE_FARMS", 2)):
        monkeypatch.setattr(measuring_many, name, number)
    monkeypatch.setattr(measuring_many, "build_farms", build_farms)
    figures = measuring_many.measure_many(bakery, tmp_path / "many")
    for number in (4, 7):
        pages = list((tmp_path / f"many/{number}/build/site/work").glob("*/index.html"))
        assert number <= len(pages) <= number + 1
    assert figures["7 procedures, s"] > 0
    assert len(list((tmp_path / "many/farms_2/build").glob("farm_*"))) == 2
