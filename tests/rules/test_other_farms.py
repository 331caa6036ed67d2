"""The shared content holds to the rules for other farms than the demonstration, which only plan otherwise."""

import shutil
from pathlib import Path

import pytest

from generator.computing import Workbook
from generator.pipeline.order import HERE
from generator.reading import read_library
from generator.rules import check_rules


@pytest.mark.parametrize(
    ("planned", "instead"),
    [
        ("species: broiler", "species: duck"),
        ("chill_method: slush_still", "chill_method: air"),
        ("birds: 60", "birds: 60\n    chill_water_temperature: 5 degC"),
    ],
)
def test_a_farm_that_plans_otherwise_has_no_faults(planned: str, instead: str, tmp_path: Path) -> None:
    farm = Path(shutil.copytree(HERE / "content/farms/demo", tmp_path / "farm"))
    plans = farm / "plans/plans.yml"
    written = plans.read_text(encoding="utf-8")
    assert planned in written
    plans.write_text(written.replace(planned, instead, 1), encoding="utf-8")
    reading = read_library(HERE / "content/shared", farm)
    assert check_rules(reading, Workbook.of(reading)) == []
