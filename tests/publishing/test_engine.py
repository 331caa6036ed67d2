from datetime import UTC, datetime
from pathlib import Path

import pytest

from generator.problems import ProblemsFound
from generator.publishing.engine import run_engine

DAY = datetime(2026, 5, 31, tzinfo=UTC)


def run(folder: Path, text: str, **settings: object) -> Path:
    (folder / "docs").mkdir()
    (folder / "docs/index.md").write_text(text)
    (folder / "mkdocs.yml").write_text("site_name: Day\ntheme: {name: material, font: false}\nplugins: [search]\n")
    run_engine(folder / "mkdocs.yml", folder / "docs", folder / "site", settings, DAY)
    return folder / "site"


def test_pages_are_made_and_the_day_is_the_one_given(tmp_path: Path) -> None:
    site = run(tmp_path, "# Hello", site_url="https://farm.example/day/")
    assert "<h1" in (site / "index.html").read_text()
    assert "<lastmod>2026-05-31</lastmod>" in (site / "sitemap.xml").read_text()


def test_a_link_that_leads_nowhere_is_a_problem(tmp_path: Path, capfd: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(ProblemsFound, match=r"contains a link 'lost\.md'"):
        run(tmp_path, "[lost](lost.md)")
    assert capfd.readouterr() == ("", "")


def test_settings_that_the_engine_refuses_are_a_problem(tmp_path: Path) -> None:
    with pytest.raises(ProblemsFound):
        run(tmp_path, "# Hello", no_such_setting_type=1, nav="not a list")
