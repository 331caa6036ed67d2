"""A farm of its own is told what its folder did to content that is not its to change."""

import shutil
from pathlib import Path

import pytest

from generator.pipeline.checking import read_and_check
from generator.pipeline.order import Order
from generator.problems import ProblemsFound


def silent(step: str) -> None:
    pass


def test_what_a_farms_folder_breaks_elsewhere_is_told_with_the_folder(bakery: Order, tmp_path: Path) -> None:
    own = Path(shutil.copytree(bakery.farm, tmp_path / "hearth"))
    (own / "procedures/less.yml").write_text("mix_the_dough:\n  steps:\n    pour: ~remove\n")
    shutil.copy(own / "procedures/less.yml", bakery.farm / "procedures/less.yml")
    for farm, told in ((own, True), (bakery.farm, False)):
        with pytest.raises(ProblemsFound) as found:
            read_and_check(Order(bakery.content, tmp_path / "build", own=farm), silent)
        elsewhere = [each for each in found.value.problems if "/shared/" in each.place.file]
        assert elsewhere, found.value.problems
        words = (
            f"this came of what stands in {own}: put back what it takes out, or change or `~remove` this entry there"
        )
        assert all((words in each.hint) == told for each in elsewhere)


def test_what_a_farms_figure_leaves_unused_is_no_fault(bakery: Order, tmp_path: Path) -> None:
    own = Path(shutil.copytree(bakery.farm, tmp_path / "hearth"))
    (own / "quantities/mine.yml").write_text("salt_share: {value: 3 percent, source: farm's own figure}\n")
    read_and_check(Order(bakery.content, tmp_path / "build", own=own), silent)
