import os
import subprocess
import sys
from pathlib import Path

import pytest

from generator.pipeline import story
from generator.pipeline.freshness import is_fresh
from generator.pipeline.order import HERE, Order
from generator.pipeline.story import build
from generator.problems import ProblemsFound


def silent(step: str) -> None:
    pass


def every_file(site: Path) -> dict[str, bytes]:
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in site.rglob("*") if path.is_file()}


def test_another_trade_comes_out_as_a_working_site(built_bakery: Order) -> None:
    bakery = built_bakery
    page = (bakery.site / "work/mix_the_dough/index.html").read_text(encoding="utf-8")
    # 40 loaves x 0.9 kg / (1 + 80 % water + 2 % salt) = 19.78 kg of flour
    assert '<b data-quantity="flour_mass">19.8\N{NO-BREAK SPACE}kg (43.6\N{NO-BREAK SPACE}lb)</b>' in page
    assert "const version" in (bakery.site / "worker.js").read_text(encoding="utf-8")
    everything = b"".join(every_file(bakery.site).values()).lower()
    assert [word for word in (b"poultry", b"chicken", b"pluck", b"carcass") if word in everything] == []


def test_the_same_content_gives_the_same_bytes(built_bakery: Order, tmp_path: Path) -> None:
    """Another process, folder, time zone and order of hashes, and another moment than the first build."""
    words = ["build", "--content", built_bakery.content, "--farm", built_bakery.farm, "--into", tmp_path / "again"]
    surroundings = {**os.environ, "PYTHONHASHSEED": "7", "PYTHONPATH": str(HERE), "TZ": "UTC-9"}
    program = [sys.executable, "-m", "generator.command_line", *map(str, words)]
    subprocess.run(program, cwd=tmp_path, env=surroundings, check=True, capture_output=True)
    assert every_file(tmp_path / "again/site") == every_file(built_bakery.site)


def test_a_build_over_an_old_one_gives_the_same_as_a_fresh_one(built_bakery: Order) -> None:
    bakery = built_bakery
    first = every_file(bakery.site)
    steps = bakery.shared / "procedures/bake.yml"
    before = steps.read_text()
    steps.write_text(before.replace("bake_the_loaves:", "bake_the_bread:"))
    own = bakery.farm / "procedures/own.yml"
    own.write_text(own.read_text().replace("bake_the_loaves:", "bake_the_bread:"))
    build(bakery, silent)
    assert "work/bake_the_loaves/index.html" not in every_file(bakery.site)
    steps.write_text(before)
    own.write_text(own.read_text().replace("bake_the_bread:", "bake_the_loaves:"))
    build(bakery, silent)
    assert every_file(bakery.site) == first


@pytest.mark.parametrize("folder", ["site", "docs"])
def test_what_no_build_made_is_not_deleted(bakery: Order, folder: str) -> None:
    own = getattr(bakery, folder) / "photos/barn.jpg"
    own.parent.mkdir(parents=True)
    own.write_bytes(b"a picture")
    with pytest.raises(ProblemsFound, match="holds what no build made"):
        build(bakery, silent)
    assert own.read_bytes() == b"a picture"


def test_a_build_that_was_cut_off_at_the_swap_is_not_taken_for_the_one_before(
    built_bakery: Order, monkeypatch: pytest.MonkeyPatch
) -> None:
    bakery = built_bakery
    build(bakery, silent)
    assert is_fresh(bakery)
    steps = bakery.shared / "procedures/bake.yml"
    before = steps.read_text()
    steps.write_text(before.replace("Wet every grain", "Wet each grain"))

    def cut(*told: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("generator.pipeline.story.keep_mark", cut)
    with pytest.raises(KeyboardInterrupt):
        build(bakery, silent)
    steps.write_text(before)
    assert not is_fresh(bakery), "the site is that of the changed content"
    monkeypatch.undo()
    build(bakery, silent)


@pytest.mark.parametrize("fault", ["content", "rule", "pages", "engine", "seal"])
def test_after_a_fault_at_any_stage_the_last_good_site_is_as_it_was(
    built_bakery: Order, fault: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    bakery = built_bakery
    good = every_file(bakery.into)
    break_at(fault, bakery, monkeypatch)
    with pytest.raises((ProblemsFound, OSError)):
        build(bakery, silent)
    assert every_file(bakery.site) == {
        name.removeprefix("site/"): content for name, content in good.items() if name.startswith("site/")
    }
    assert {path.name for path in bakery.into.iterdir()} == {
        "built.json",
        "looks",
        "docs",
        "papers",
        "site",
        "templates",
        "units.json",
    }
    assert not is_fresh(bakery) or fault in ("engine", "seal")


def break_at(stage: str, bakery: Order, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object) -> None:
        raise OSError(28, "No space left on device")

    if stage == "content":
        (bakery.shared / "procedures/mix.yml").write_text("mix_the_dough: {")
    elif stage == "rule":
        (bakery.shared / "terms/more.yml").write_text("poolish: {title: Poolish, says: A wet starter.}")
    elif stage == "pages":
        words = bakery.shared / "words/site.yml"
        words.write_text(words.read_text().replace("site_name:", "site_named:"))
    else:
        monkeypatch.setattr(story, {"engine": "run_engine", "seal": "seal"}[stage], fail)


def test_a_preview_has_no_worker_but_can_be_searched(bakery: Order) -> None:
    build(bakery.preview, silent, sealed=False)
    assert "const version" not in (bakery.preview.site / "worker.js").read_text(encoding="utf-8")
    assert (bakery.into / "preview/site/index.html").is_file()
    assert "work/mix_the_dough/#step-" in (bakery.preview.site / "search.json").read_text(encoding="utf-8")


def test_the_steps_are_told_in_the_order_of_the_picture(bakery: Order) -> None:
    told: list[str] = []
    build(bakery, told.append)
    assert told == [
        "Reading the content",
        "Computing the numbers",
        "Checking the rules",
        "Writing the pages",
        "Setting the papers",
        "Making the site",
        "Sealing the site",
    ]
