"""The other trade's edition, rendered once."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.computing import Workbook
from generator.reading import read_library
from generator.rendering import Edition, Rendered, render_site


def make_edition(content: Path) -> Edition:
    reading = read_library(content / "shared", content / "bakery")
    workbook = Workbook.of(reading)
    settings = workbook.settle(reading.library.plans[reading.library.this_farm.plan].values, {})
    day = workbook.compute(settings)
    return Edition(reading, workbook.book, workbook, settings, day, version="9.9.9", made_on="2026-01-02")


@pytest.fixture(scope="session")
def edition(bakery_content: Path) -> Edition:
    return make_edition(bakery_content)


@pytest.fixture(scope="session")
def rendered(edition: Edition) -> Rendered:
    return render_site(edition)
