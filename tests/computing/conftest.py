"""Workbooks of every content there is: the product's own, and another trade's."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.computing import Workbook
from generator.reading import read_library
from tests.product import product_workbook
from tests.workshop import workshop

__all__ = ["workshop"]

ROOT = Path(__file__).parents[2]
CONTENTS = {
    "product": (ROOT / "content/shared", ROOT / "content/farms/demo"),
    "bakery": (ROOT / "tests/other_trade/shared", ROOT / "tests/other_trade/bakery"),
}


@pytest.fixture(scope="session")
def bakery() -> Workbook:
    return Workbook.of(read_library(*CONTENTS["bakery"]))


@pytest.fixture(scope="session", params=CONTENTS)
def any_workbook(request: pytest.FixtureRequest) -> Workbook:
    return product_workbook() if request.param == "product" else Workbook.of(read_library(*CONTENTS[request.param]))
