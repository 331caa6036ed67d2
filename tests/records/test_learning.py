"""What days teach: published times come back, and a figure goes into a farm's folder without harm."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.pipeline.order import HERE, Order
from generator.pipeline.recording import accept
from generator.problems import ProblemsFound
from generator.reading import read_library
from generator.records.days import RecordBook
from generator.records.entry import Entry
from generator.records.learning import Learned, learn, solve
from generator.records.merging import merge
from generator.records.overlay import write_figure
from generator.records.taking import take_file
from tests.records.samples import DEMO, NOON, entry
from tests.workshop import OTHER_TRADE

LIMIT = {"low": 269.82, "high": 277.55}
"""26 °F, and the 4.4 °C at which the published test ends."""


def cooled(book: RecordBook, plan: dict[str, float | str], bath: float, readings: list[tuple[float, float]]) -> Learned:
    """What the lesson on cooling makes of readings as (minutes, kelvin), all of one bird."""
    entries: list[Entry] = [
        entry(1, kind="plan", values=plan, text="test"),
        entry(2, of="tub_reading", value=bath, lot="1"),
    ]
    for number, (minutes, value) in enumerate(readings, 3):
        at = NOON + round(minutes * 60_000)
        fields: dict[str, Any] = {"of": "breast_reading", "value": value, "lot": "1", "limit": LIMIT, "at": at}
        entries.append(entry(number, **fields))
    (day,) = book.days(entries)
    return next(each for each in learn(day) if each.lesson == "chill_lesson")


def time_with(book: RecordBook, plan: dict[str, float | str], learned: Learned, bath: float, start: float) -> float:
    """Minutes in which the plan, with what was learned, cools to the published end."""
    assert learned.value is not None
    known = {"chill_water_temperature": bath, "body_temperature": start, "chill_target_temperature": LIMIT["high"]}
    settings = book.workbook.settler.settle({**plan, **known, learned.input: learned.value}, {})
    return float(book.workbook.compute(settings).values["chill_time"]) / 60


def broiler(kilograms: float) -> dict[str, float | str]:
    return {"species": "broiler", "live_mass": kilograms / 0.75, "dressing_fraction": 0.75}


BROILER = broiler(1.25)
# Published (source bagged-chill): broilers of 0.9 to 1.6 kg, 32 to 4.4 °C in ice and water: bare 43 ± 8 min, in a loose
# bag 109 ± 24 min. The lesson's own word on its error: a minute.
PUBLISHED = {"bare": (1.25, 43), "bare, light": (0.9, 43 - 8), "bare, heavy": (1.6, 43 + 8), "bagged": (1.25, 109)}


@pytest.mark.parametrize(("kilograms", "minutes"), PUBLISHED.values(), ids=PUBLISHED)
def test_a_published_series_gives_its_published_time(book: RecordBook, kilograms: float, minutes: int) -> None:
    plan = broiler(kilograms)
    learned = cooled(book, plan, 273.15, [(0, 305.15), (minutes, 277.55)])
    assert learned.why == ""
    assert time_with(book, plan, learned, 273.15, 305.15) == pytest.approx(minutes, abs=1)


def slab(half: float, conductivity: float, diffusivity: float, transfer: float, minutes: int) -> list[float]:
    """The middle of a slab from 305.15 K in a bath of 273.15 K, at each minute, by finite volumes."""
    cells, step = 30, 0.5
    width = half / cells
    values = np.full(cells, 305.15)
    outer = 1 / (1 / transfer + width / 2 / conductivity)
    told = [305.15]
    for _ in range(minutes):
        for _ in range(int(60 / step)):
            flow = conductivity / width * np.diff(values)
            out = np.append(flow, outer * (273.15 - values[-1]))
            into = np.append(0, flow)
            values = values + step * diffusivity / conductivity / width * (out - into)
        told.append(float(values[0]))
    return told


def test_readings_of_a_computed_slab_give_back_how_hard_the_bath_cools(book: RecordBook) -> None:
    """Read every ten minutes to half a degree Fahrenheit; by the lesson's own word the time agrees to a minute."""
    computed = book.workbook.compute(book.workbook.settler.settle(BROILER, {})).values
    half, conductivity, diffusivity = (
        float(computed[name]) for name in ("breast_half", "carcass_conductivity", "carcass_diffusivity")
    )
    true = slab(half, conductivity, diffusivity, 200, 100)
    readings = [(minute, 255.372 + round((true[minute] - 255.372) * 3.6) / 3.6) for minute in range(0, 101, 10)]
    learned = cooled(book, BROILER, 273.15, [(float(minute), value) for minute, value in readings])
    really = next(minute for minute, value in enumerate(true) if value <= LIMIT["high"])
    assert time_with(book, BROILER, learned, 273.15, 305.15) == pytest.approx(really, abs=1.5)
    assert learned.value == pytest.approx(200, rel=0.1)


@pytest.fixture(scope="module")
def demo_lessons(book: RecordBook) -> dict[str, Learned]:
    entries = merge(*(take_file(path, book.ranges).entries for path in DEMO))
    (day,) = book.days(entries)
    return {each.lesson: each for each in learn(day)}


def test_the_example_day(demo_lessons: dict[str, Learned]) -> None:
    """By hand: 349 lb over 60; 250.4 / 58 over 349 / 60; (32 + 38 + 35 + 36 + 34) / 5; 105 min of heat-up."""
    found = demo_lessons
    assert found["live_mass_lesson"].written == "5.82 lb/bird"
    assert found["dressing_lesson"].written == "74.2 percent"
    assert found["kill_lesson"].written == "35 s/bird"
    assert found["evisceration_lesson"].written == "161 s/bird"
    assert found["body_temperature_lesson"].written == "95 degF"
    assert found["burner_efficiency_lesson"].observed == 105 * 60
    assert found["ice_lesson"].observed == pytest.approx(350 * 0.45359237, rel=1e-4)
    assert found["wash_lesson"].why == "missing"
    assert found["wash_lesson"].missing == ("wash_timed_mean",)


def test_a_learned_figure_makes_the_plan_compute_what_was_read(
    book: RecordBook, demo_lessons: dict[str, Learned]
) -> None:
    """60 to 145 °F with the air at 66 °F in 105 minutes."""
    learned = demo_lessons["burner_efficiency_lesson"]
    (day,) = book.days(take_file(DEMO[0], book.ranges).entries)
    assert learned.value is not None
    read = {"scald_fill_temperature": 288.7056, "scald_set_temperature": 335.9278, "air_temperature": 292.0389}
    values = book.workbook.compute({**day.settings, **read, learned.input: learned.value}).values
    assert values["scald_heat_up_time"] == pytest.approx(105 * 60, rel=0.005)


def test_a_reading_that_nothing_explains_teaches_nothing(book: RecordBook) -> None:
    assert cooled(book, BROILER, 273.15, [(0, 305.15), (2, 277.0)]).why == "no_fit"
    assert cooled(book, BROILER, 273.15, [(0, 305.15), (30, 290.0)]).why == "missing"


def test_a_figure_that_the_plan_would_refuse_is_marked_so(book: RecordBook) -> None:
    """The plan takes a time at the cones within its range only; somebody timed a bird over a pause of the crew."""
    timed = book.workbook.givens.inputs["kill_handling_time"]
    for value, why in ((timed.high, ""), (timed.high * 2, "outside")):
        read = entry(2, of="kill_timed", value=value, written="x", lot="1")
        (day,) = book.days([entry(1, kind="plan", values=BROILER, text="test"), read])
        learned = next(each for each in learn(day) if each.lesson == "kill_lesson")
        assert (learned.input, learned.why) == ("kill_handling_time", why)


@pytest.fixture
def farm(tmp_path: Path) -> Path:
    return Path(shutil.copytree(HERE / "content/farms/demo", tmp_path / "farm"))


def test_an_accepted_figure_stands_in_the_farms_folder_and_nothing_else_moves(
    farm: Path, book: RecordBook, demo_lessons: dict[str, Learned]
) -> None:
    before = {path: path.read_text("utf-8") for path in farm.rglob("*.yml")}
    order = Order(HERE / "content", HERE / "build", farm)
    found = demo_lessons
    names = ("burner_efficiency_lesson", "chill_lesson")
    changed = [accept(order, book, found[name]) for name in names]
    plans = farm / "plans/plans.yml"
    assert changed == [farm / "quantities/learned.yml", plans]
    assert changed[0].read_text("utf-8").splitlines()[1:] == [
        "burner_efficiency:", f"  default: {found['burner_efficiency_lesson'].written}", "  source: farm's own figure",
    ]  # fmt: skip
    chill = found["chill_lesson"].written
    told = before[plans].replace("    species: broiler", f"    chill_heat_transfer: {chill}\n    species: broiler", 1)
    assert plans.read_text("utf-8") == told
    assert all(path.read_text("utf-8") == text for path, text in before.items() if path != plans)


@pytest.fixture
def bakery(tmp_path: Path) -> Path:
    return Path(shutil.copytree(OTHER_TRADE / "bakery", tmp_path / "bakery"))


OWN = "source: farm's own figure"
CASES = {
    "block": (f"bake_time:\n  default: 44 min # measured\n  {OWN}\n", "default: 41 min # measured"),
    "braces": (f"bake_time: {{default: 44 min, {OWN}}}\n", f"{{default: 41 min, {OWN}}}"),
    "quotes": (f"bake_time:\n  default: '44 min'\n  {OWN}\n", "default: 41 min\n"),
    "title": ("bake_time:\n  title: Our oven\n", f"bake_time:\n  default: 41 min\n  {OWN}\n  title: Our oven\n"),
    "title in braces": ("bake_time: {title: Our oven}\n", f"{{default: 41 min, {OWN}, title: Our oven}}"),
    "nothing in braces": ("bake_time: {}\n", f"bake_time: {{default: 41 min, {OWN}}}\n"),
    "line ends of another system": (f"bake_time:\r\n  default: 44 min\r\n  {OWN}\r\n", ": 41 min\r\n"),
    "mark at the beginning": (
        f"\ufeffbake_time: {{default: 44 min, {OWN}}}\n",
        "\ufeffbake_time: {default: 41 min,",
    ),
}


@pytest.mark.parametrize(("text", "wanted"), CASES.values(), ids=CASES)
def test_figures_are_put_into_what_people_wrote(bakery: Path, text: str, wanted: str) -> None:
    own = bakery / "quantities/own.yml"
    own.write_text(text, "utf-8", newline="")

    def accepted() -> bool:
        library = read_library(OTHER_TRADE / "shared", bakery).library
        return library.quantities["bake_time"].default == "41 min"

    assert write_figure(bakery, "saturday", "bake_time", "41 min", False, accepted) == own
    assert wanted in own.read_bytes().decode()


def test_a_figure_that_does_not_arrive_is_taken_back(farm: Path) -> None:
    plans = farm / "plans/plans.yml"
    before = plans.read_bytes()
    with pytest.raises(ProblemsFound, match="could not be put in"):
        write_figure(farm, "july_broilers", "live_mass", "6 lb/bird", False, lambda: False)
    assert plans.read_bytes() == before
    with pytest.raises(ProblemsFound, match="could not be put in"):
        write_figure(farm, "july_broilers", "wash_time", "6 s/bird", False, lambda: False)
    assert not (farm / "quantities/learned.yml").exists()


@pytest.mark.parametrize("cut", [KeyboardInterrupt(), OSError(5, "Input/output error")])
@pytest.mark.parametrize(("name", "written"), [("live_mass", "6 lb/bird"), ("wash_time", "6 s/bird")])
def test_a_figure_that_was_not_proved_is_taken_back(farm: Path, cut: BaseException, name: str, written: str) -> None:
    before = {path: path.read_bytes() for path in farm.rglob("*.yml")}

    def accepted() -> bool:
        raise cut

    with pytest.raises(type(cut)):
        write_figure(farm, "july_broilers", name, written, False, accepted)
    assert {path: path.read_bytes() for path in farm.rglob("*.yml")} == before


def test_a_figure_of_another_way_of_working_is_not_put_into_the_plan(book: RecordBook, farm: Path) -> None:
    stirred = {**BROILER, "chill_method": "slush_stirred"}
    learned = cooled(book, stirred, 273.15, [(0, 305.15), (43, 277.55)])
    with pytest.raises(ProblemsFound, match="learned with `chill_method` at `slush_stirred`"):
        accept(Order(HERE / "content", HERE / "build", farm), book, learned)


def test_a_figure_that_fits_exactly_at_the_end_of_its_range_is_found(book: RecordBook) -> None:
    lesson = book.workbook.library.lessons["burner_efficiency_lesson"]
    settings = book.workbook.settler.settle(BROILER, {})
    entry = book.workbook.givens.inputs[lesson.input]
    observed = book.workbook.compute({**settings, lesson.input: entry.high}).values[str(lesson.by)]
    assert solve(book, settings, lesson, float(observed)) == entry.high
