"""A plan that cannot be is no fault of the content, yet nobody gets its papers without a word."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

import pdfplumber
import pytest

from generator.pipeline.order import HERE
from tests.command_line.conftest import Run

STOP = "STOP: The chill is planned at"


@pytest.fixture
def farm(tmp_path: Path) -> Path:
    """Running water at 9 °C is to chill birds to 2 °C."""
    farm = Path(shutil.copytree(HERE / "content/farms/demo", tmp_path / "farm"))
    values = "{chill_method: running_water, tap_temperature: 9 degC, chill_water_temperature: 2 degC}"
    (farm / "plans/warm.yml").write_text(f"warm:\n  title: Warm water\n  values: {values}\n", encoding="utf-8")
    file = farm / "farm/farm.yml"
    file.write_text(re.sub(r"(?m)^  plan: .*$", "  plan: warm", file.read_text(encoding="utf-8")), encoding="utf-8")
    return farm


def test_check_names_the_stops_of_the_plan(run: Run, farm: Path) -> None:
    answer = run("check", "--farm", farm)
    assert answer.status == 0
    assert "The plan “Warm water” is not ready. It has " in answer.out
    assert STOP in answer.out
    assert "STOP" not in run("check").out


def test_papers_say_it_at_their_foot(run: Run, farm: Path, tmp_path: Path) -> None:
    for words, is_said in ((["--farm", farm], True), ([], False)):
        answer = run("cards", "--station", "crew_board", "--out", tmp_path, *words)
        assert (STOP in answer.out) == is_said
        with pdfplumber.open(tmp_path / "crew_board.pdf") as paper:
            assert ("THIS PLAN IS NOT READY. Stops in it: " in (paper.pages[0].extract_text() or "")) == is_said


def test_what_is_refused_says_why_with_its_numbers(run: Run) -> None:
    weak = ["--set", "burner_power=5000 Btu/h"]
    told = json.loads(run("numbers", "--json", *weak).out)
    refused = {name: number["refused"] for name, number in told.items() if "refused" in number}
    assert refused
    assert not [sentence for sentence in refused.values() if "{" in sentence]
    chain = run("numbers", "--why", "scald_heat_up_time", *weak).out
    assert "    refused: The burner cannot heat this water to 1" in chain
