import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from generator.command_line import numbers
from generator.computing import Workbook
from generator.pipeline.order import HERE, Order
from generator.reading import Reading
from tests.product import product_reading, product_workbook

from .conftest import Run

PROMISED = (Path(__file__).parent / "promised_numbers.txt").read_text().split()
UNITS = {"ice_total": "kg", "scald_heat_up_time": "s", "line_rate": "bird/s", "air_temperature": "K", "birds": "bird"}


@pytest.fixture(autouse=True)
def read_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """The product's content does not change between these tests."""
    monkeypatch.setattr(numbers, "open_content", read_content)


def read_content(order: Order) -> tuple[Reading, Workbook]:
    assert (order.shared, order.farm) == (HERE / "content/shared", HERE / "content/farms/demo")
    return product_reading(), product_workbook()


def test_json_has_every_promised_number(run: Run) -> None:
    answer = run("numbers", "--json")
    assert answer.status == 0
    told = json.loads(answer.out)
    assert [name for name in PROMISED if name not in told] == []
    assert {name: told[name]["unit"] for name in UNITS} == UNITS
    for name, number in told.items():
        assert set(number) - {"refused"} == {"value", "unit", "title", "from"}, name
        assert set(number["from"]) <= set(told)
        assert (number["value"] is None) == ("refused" in number), name


def test_a_change_is_in_si_inside(run: Run) -> None:
    told = json.loads(run("numbers", "--json", "--set", "air_temperature=85degF", "--set", "birds=120").out)
    assert told["air_temperature"]["value"] == pytest.approx(302.594, abs=0.001)  # (85 + 459.67) * 5 / 9
    assert told["birds"]["value"] == 120


def test_of_two_changes_the_later_counts(run: Run) -> None:
    told = json.loads(run("numbers", "--json", "--set", "birds=120", "--set", "birds=121").out)
    assert told["birds"]["value"] == 121


def test_values_that_cannot_be_used_are_refused_one_line_each(run: Run) -> None:
    wrong = ["birdz=4", "air_temperature=85gal", "birds=1000000", "cones=2.5", "line_rate=4", "species=cow", "birds"]
    wrong.append("=3")
    answer = run("numbers", *[word for value in wrong for word in ("--set", value)])
    assert (answer.status, answer.out) == (2, "")
    assert answer.err.splitlines() == [
        "--set: `=3` is not ID=VALUE: write, for example, `--set altitude=1500m`",
        "--set: `birds` is not ID=VALUE: write, for example, `--set altitude=1500m`",
        "--set air_temperature: `gal` does not fit “Temperature”: write it in `degF` or `degC`",
        "--set birds: `birds` is 1 000 000 birds, out of its range: from 1 bird to 1000 birds",
        "--set birdz: unknown input `birdz`: did you mean `birds`?",
        "--set cones: `cones` counts things, and 2.5 is not a whole number: write a whole number",
        "--set line_rate: `line_rate` is computed, not an input: set what it depends on",
        "--set species: `cow` is no option of `species`: options: broiler, stewing_hen, turkey, duck, goose",
    ]


@pytest.mark.parametrize("text", ["birds: 90\n", "title: Friday\nvalues:\n  birds: 90 bird\n"])
def test_a_plan_may_be_a_file(run: Run, tmp_path: Path, text: str) -> None:
    plan = tmp_path / "friday.yml"
    plan.write_text(text)
    assert json.loads(run("numbers", "--json", "--plan", plan).out)["birds"]["value"] == 90


def test_faults_in_a_plan_file_have_their_place(run: Run, tmp_path: Path) -> None:
    plan = tmp_path / "friday.yml"
    plan.write_text("birds: 1900\nspecies: [duck]\nbrids: 3\nair_temperature:\n")
    answer = run("numbers", "--plan", plan)
    assert answer.status == 2
    assert answer.err.splitlines() == [
        f"{plan}:1:8: `birds` is 1900 birds, out of its range: from 1 bird to 1000 birds",
        f"{plan}:2:1: the value of `species` is not a plain text or number: write `species:` and one value behind it",
        f"{plan}:3:8: unknown input `brids`: did you mean `birds`?",
        f"{plan}:4:17: the value of `air_temperature` is not a plain text or number: "
        "write `air_temperature:` and one value behind it",
    ]


@pytest.mark.parametrize(
    ("content", "line"),
    [
        (b"", "holds no values: write one a line: `altitude: 1500 m`"),
        (b"- birds\n", "holds no values: write one a line: `altitude: 1500 m`"),
        (b"birds: \xff\n", "1: not UTF-8: byte 0xFF at offset 7: save the file as UTF-8 in your editor"),
    ],
)
def test_a_plan_file_that_is_none(run: Run, tmp_path: Path, content: bytes, line: str) -> None:
    plan = tmp_path / "friday.yml"
    plan.write_bytes(content)
    answer = run("numbers", "--plan", plan)
    assert answer.status == 2
    assert answer.err.strip().endswith(line)


def test_an_unknown_plan_names_the_plans(run: Run) -> None:
    answer = run("numbers", "--plan", "fox")
    assert answer.status == 2
    assert answer.err.startswith("--plan: no plan and no file `fox`: the plans are july_broilers, ")


def test_the_table_shows_both_systems_and_where_from(run: Run) -> None:
    table = run("numbers", "--set", "air_temperature=86degF").out
    assert "86 °F (30 °C)" in table
    assert "carcass_mass_total from " in table


def test_why_goes_down_to_inputs_and_sources_each_once(run: Run) -> None:
    answer = run("numbers", "--why", "ice_total", "--set", "birds=120")
    assert answer.status == 0
    lines = [line for line in answer.out.splitlines() if line and not line.startswith(" ")]
    heads = [line.split("  ")[0] for line in lines]
    assert heads[0] == "ice_total"
    assert len(heads) == len(set(heads))
    assert {"live_mass", "birds", "air_temperature", "ice_latent_heat"} <= set(heads)
    assert any(line.startswith("birds  ") and line.endswith(": 120 birds (changed for this run)") for line in lines)
    assert "    source: " in answer.out


def test_why_of_nothing_we_have(run: Run) -> None:
    answer = run("numbers", "--why", "ice_totl")
    assert (answer.status, answer.err) == (2, "--why: unknown quantity `ice_totl`: did you mean `ice_total`?\n")


def test_a_reader_that_leaves_early_is_no_fault() -> None:
    program = [sys.executable, "-m", "generator.command_line", "numbers"]
    with subprocess.Popen(program, stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=HERE) as running:
        assert running.stdout and running.stderr
        running.stdout.readline()
        running.stdout.close()
        assert running.stderr.read() == b""
    assert os.name == "nt" or running.returncode in (0, 1)


def test_the_worst_is_printed_first(run: Run) -> None:
    """By the ladder of signal words in ANSI Z535.6, after what stops the day."""
    changes = ("bleed_time=40s", "tap_temperature=90degF", "air_temperature=96degF", "birds=390", "cones=1", "crew=3")
    lines = run("numbers", *[word for change in changes for word in ("--set", change)]).out.splitlines()
    ladder = ["STOP", "DANGER", "WARNING", "CAUTION", "NOTICE"]
    signs = [line.partition(":")[0] for line in lines if line.partition(":")[0] in ladder]
    assert {"STOP", "WARNING", "CAUTION", "NOTICE"} <= set(signs)
    assert signs == sorted(signs, key=ladder.index)
