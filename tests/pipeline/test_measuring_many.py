"""The figures of growth are about what they say: so many procedures, so many farms."""

from pathlib import Path

import pytest

from generator.pipeline import measuring_many
from generator.pipeline.order import Order


def test_so_many_procedures_and_farms_are_made(bakery: Order, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name, number in (("FEW", 4), ("MANY", 7), ("SOME_FARMS", 1), ("MORE_FARMS", 2)):
        monkeypatch.setattr(measuring_many, name, number)
    figures = measuring_many.measure_many(bakery, tmp_path / "many")
    for number in (4, 7):
        pages = list((tmp_path / f"many/{number}/build/site/work").glob("*/index.html"))
        assert number <= len(pages) <= number + 1
    assert figures["7 procedures, s"] > 0
    assert len(list((tmp_path / "many/farms_2/build").glob("farm_*/site/index.html"))) == 2
