"""Pages about plans and teaching are there when content has something for them, and their programs get it whole."""

from __future__ import annotations

import json
from typing import Any

import pytest

from generator.pipeline.order import Order
from generator.rendering import Edition, Rendered, render_site
from generator.rendering.plan_content import plan_content
from generator.rendering.plan_pages import plan_pages
from generator.rendering.teaching_pages import outside, taught_at, teaching_pages
from generator.teaching.teaching_program import teaching_program
from generator.telling import addresses
from generator.telling.figures import Figures
from generator.telling.words import Words
from tests.rendering.conftest import make_edition

MORE = {
    "crews/crew.yml": """\
night:
  title: The night
  order: 10
  people: oven_places
  places: {mix: {title: At the bowl, people: oven_places, best: oven_loads, rates: [slowest_rate]}}
""",
    "views/views.yml": """\
later:
  {title: Later, description: Last., order: 20, bars: {marked: least, mark: Slow, quantities: {slowest_rate: Both}}}
sooner:
  {title: Sooner, description: First., order: 10, bars: {marked: most, mark: Most, quantities: {flour_mass: Flour}}}
""",
    "questions/questions.yml": """\
how_many: {title: How many?, order: 10, asks: "Done at:", trial: {give: loaves, tells: [ready_time]}}
""",
    "readings/readings.yml": """\
late: {title: Crust, phase: morning, order: 20, source: common practice}
soon: {title: Dough, phase: night, order: 10, source: common practice}
""",
    "drills/drills.yml": """\
torn:
  asks: The dough tears. Why?
  answers:
    dry: {says: Too little water., right: true}
    wet: {says: Too much water., why: It sticks.}
    old: {says: Too old., why: It sinks.}
  why: It lacks water.
  written: {procedure: mix_the_dough, part: fault, id: tight}
""",
    "skills/skills.yml": """\
second:
  title: Baking
  order: 20
  shown: Baked.
  procedure: bake_the_loaves
  places: [bake_the_loaves]
  lasts: bake_time
  source: common practice
first:
  title: Mixing
  order: 10
  shown: Mixed.
  procedure: mix_the_dough
  places: [mix_the_dough, bake_the_loaves]
  source: common practice
""",
    "paths/paths.yml": """\
later: {title: Later, order: 20, minutes: 5, before: [sooner], legs: {words: {title: Words, terms: [crumb]}}}
sooner:
  title: Sooner
  order: 10
  minutes: 5
  place: mix_the_dough
  legs:
    mix: {title: Mix, procedure: mix_the_dough, steps: [weigh], drills: [torn]}
  skills: [first]
""",
    "instructions/teach.yml": """\
show: {title: Show it, order: 20, shows_steps: true, points: {once: Do it once.}}
ready: {title: Make ready, order: 10, points: {ease: Put them at ease.}}
""",
    "procedures/more.yml": """\
cool:
  title: Cool
  verb: Cool
  phase: morning
  order: 30
  who: Anyone
  purpose: Cool it.
  good: Cold.
  steps: {cover: {action: Cover it., source: common practice}}
  faults: {soft: {sign: Soft., cause: Steam., remedy: Wait., readings: [late, soon], source: common practice}}
""",
}
MONDAY = "monday: {title: Quiet Monday, values: {loaves: 12 loaf, flour_kind: white}}\n"


@pytest.fixture
def edition(bakery: Order) -> Edition:
    """The bakery with something for every page about plans and teaching."""
    for name, text in MORE.items():
        file = bakery.shared / name
        file.parent.mkdir(exist_ok=True)
        file.write_text(text, encoding="utf-8")
    plans = bakery.content / "bakery/plans/plans.yml"
    plans.write_text(plans.read_text(encoding="utf-8") + MONDAY, encoding="utf-8")
    return make_edition(bakery.content)


def told(files: dict[str, str]) -> dict[str, Any]:
    """What a program is told, by the name under which it is exported."""
    (text,) = files.values()
    lines = [line.removeprefix("export const ").removesuffix(";").split(" = ", 1) for line in text.splitlines()]
    return {name: json.loads(value) for name, value in lines}


def test_a_bakery_that_says_nothing_about_them_has_none(bakery: Order) -> None:
    plain = make_edition(bakery.content)
    assert [address for _, address, _ in plan_pages(plain)] == [addresses.SHOP, addresses.PASS_ON, addresses.SHEET]
    assert [address for _, address, _ in teaching_pages(plain)] == [addresses.FAULTS]


def test_pages_come_in_the_order_of_the_menu_and_entries_in_their_own(edition: Edition) -> None:
    plans = {name: parts for name, _, parts in plan_pages(edition)}
    assert list(plans) == ["shop", "crew", "views", "questions", "pass_on", "sheet"]
    assert list(plans["shop"]["supplies"]) == ["flour"]  # the one thing whose amount the plan tells
    assert [name for name, _ in plans["views"]["views"]] == ["sooner", "later"]
    lessons = {name: parts for name, _, parts in teaching_pages(edition)}
    assert list(lessons) == ["learn", "drills", "signing", "faults"]
    assert [name for name, _ in lessons["learn"]["paths"]] == ["sooner", "later"]
    assert [name for name, _ in lessons["signing"]["skills"]] == ["first", "second"]
    assert [name for name, *_ in lessons["faults"]["stations"]] == ["mix_the_dough", "cool"]


def test_readings_outside_lead_to_faults_in_the_order_in_which_they_are_read(edition: Edition) -> None:
    found = [(reading, [(name, key) for name, key, _ in faults]) for reading, faults in outside(edition)]
    assert found == [("soon", [("cool", "soft")]), ("late", [("cool", "soft")])]


def test_a_job_knows_its_questions_and_what_is_signed_for_it(edition: Edition) -> None:
    assert taught_at(edition, "mix_the_dough") == {"asked": True, "signed": ["first"]}
    assert taught_at(edition, "bake_the_loaves") == {"asked": False, "signed": ["first", "second"]}


def test_every_page_of_them_can_be_made(edition: Edition) -> None:
    made: Rendered = render_site(edition)
    assert "Quiet Monday" in made.files["phone/plan_content.js"]
    assert "The dough tears. Why?" in made.files["phone/drills.js"]
    pages = (addresses.LEARN, addresses.DRILLS, addresses.SIGNING, addresses.CREW, addresses.VIEWS, addresses.QUESTIONS)
    assert {addresses.file_of(page) for page in pages} <= set(made.files)


def test_the_teacher_is_told_jobs_skills_and_ways_in(edition: Edition) -> None:
    said = told(teaching_program(edition, Words(edition)))
    assert list(said["instructions"]) == ["ready", "show"]
    assert said["instructions"]["show"] == {"title": "Show it", "points": {"once": "Do it once."}, "steps": True}
    assert said["skills"] == {
        "first": {"title": "Mixing", "places": ["mix_the_dough", "bake_the_loaves"], "lasts": 0},
        "second": {"title": "Baking", "places": ["bake_the_loaves"], "lasts": 38 * 60},  # the bakery's own: 38 min
    }
    assert list(said["paths"]) == ["sooner", "later"]
    assert said["paths"]["sooner"] == {"title": "Sooner", "legs": {"mix": ["torn"]}, "place": "mix_the_dough"}
    assert said["paths"]["later"] == {"title": "Later", "legs": {"words": []}, "place": ""}
    assert said["people"] == ["Ida", "Olu"]
    assert "teaching_" not in "".join(said["words"])


def test_the_planner_is_told_views_people_and_other_plans(edition: Edition) -> None:
    words = Words(edition)
    said = told(plan_content(edition, Figures(edition), words))
    assert set(said["views"]) == {"sooner", "later"}
    assert said["views"]["sooner"]["bars"]["quantities"] == {"flour_mass": "Flour"}
    assert said["crews"]["night"]["places"]["mix"]["title"] == "At the bowl"
    assert said["questions"]["how_many"]["trial"]["give"] == "loaves"
    assert said["titles"]["slowest_rate"] == "Loaves an hour through both"
    assert "The room is too cold for this dough; warm the flour first." in said["refusals"].values()


def test_another_plan_is_told_as_what_differs_and_not_what_its_options_bring(edition: Edition) -> None:
    # Saturday: 40 loaves of wholemeal. White flour brings its own share of water, so that is no change of its own.
    said = told(plan_content(edition, Figures(edition), Words(edition)))
    assert said["farmPlans"] == [{"title": "Quiet Monday", "changes": {"flour_kind": "white", "loaves": 12}}]
