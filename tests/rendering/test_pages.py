"""Pages of the other trade: what must be on them, and that content stays text."""

from __future__ import annotations

import html
import json
import re
import shutil
from dataclasses import replace
from pathlib import Path

import markdown
import pytest

from generator.problems import ProblemsFound
from generator.rendering import Edition, Rendered, render_site
from generator.rendering.pages import pages
from generator.rendering.views import Views
from generator.telling import addresses
from generator.telling.figures import Figures
from generator.telling.sentences import Sentences
from tests.rendering.conftest import make_edition


def page(rendered: Rendered, name: str) -> str:
    return html.unescape(rendered.files[name]).replace("\u00a0", " ")


def test_each_procedure_and_each_group_has_a_page(edition: Edition, rendered: Rendered) -> None:
    for name in edition.library.procedures:
        assert f"work/{name}.md" in rendered.files
    groups = {item.quantity.group for item in edition.workbook.items.values()}
    for name in groups:
        assert f"numbers/{name}.md" in rendered.files


def test_a_page_stands_only_where_content_has_something_for_it(edition: Edition) -> None:
    nothing = {"supplies": {}, "terms": {}, "functions": {}, "tables": {}}
    library = edition.library.model_copy(update=nothing)
    bare = replace(edition, reading=replace(edition.reading, library=library))
    before, after = ({page.address for page in pages(each)} for each in (edition, bare))
    assert before - after == {addresses.BRING, addresses.SHOP, addresses.GLOSSARY, addresses.METHODS}
    assert after < before


def test_a_job_shows_its_parts(rendered: Rendered) -> None:
    text = page(rendered, "work/mix_the_dough.md")
    assert "Wet every grain of flour, at a temperature that lets the dough rise on time." in text
    assert "One person at the bowl" in text
    assert "A dough that lets go of the bowl." in text
    assert text.count('type="checkbox"') == len(re.findall(r'<li class="step"', text)) >= 3


def test_what_may_lie_below_nought_is_typed_where_there_is_a_minus_sign(edition: Edition, rendered: Rendered) -> None:
    """On iPhones `decimal` gives digits and a point alone (HTML Standard, inputmode; from memory for iPhones)."""
    room = edition.workbook.items["room_temperature"]
    views = Views(edition, Figures(edition), Sentences(edition, Figures(edition)))
    for lowest, keyboard in (("5 degC", "decimal"), ("-10 degC", "text"), ("-20 degF", "text")):
        colder = replace(room, quantity=room.quantity.model_copy(update={"range": (lowest, "38 degC")}))
        assert views.keyboard(colder) == keyboard
    assert re.search(r'id="field-loaves"[^>]* inputmode="decimal"', page(rendered, "plan.md"))


def test_where_help_is_needed_at_once_what_to_do_comes_first(edition: Edition, rendered: Rendered) -> None:
    urgent = {name: phase.model_copy(update={"at_hand": True}) for name, phase in edition.library.phases.items()}
    library = edition.library.model_copy(update={"phases": urgent})
    helping = render_site(replace(edition, reading=replace(edition.reading, library=library)))
    for each, urgently in ((rendered, False), (helping, True)):
        text = page(each, "work/bake_the_loaves.md")
        assert (text.index(' id="step-') < text.index('class="signal ')) == urgently
    job = page(helping, "help.md").split('<ol class="actions">')[1:]
    cautioned = [part for part in job if 'class="signal ' in part]
    assert len(cautioned) >= 2
    assert all(part.index("</ol>") < part.index('class="signal ') for part in cautioned)
    assert 'class="signal ' not in page(helping, "help.md").split('<ol class="actions">')[0]


def test_help_says_first_whom_to_call_and_where_it_is_to_come(edition: Edition, rendered: Rendered) -> None:
    """And a farm that has not written it down is told."""
    farms = {
        name: farm.model_copy(update={"emergency_call": "555-0123", "yard_address": "1 Invented Lane"})
        for name, farm in edition.library.farm.items()
    }
    library = edition.library.model_copy(update={"farm": farms})
    text = page(render_site(replace(edition, reading=replace(edition.reading, library=library))), "help.md")
    assert text.index('href="tel:5550123">') < text.index("1 Invented Lane") < text.index('class="contacts"')
    assert "is not written here" not in text
    assert "emergency number or address is not written here" in page(rendered, "help.md")


def test_every_stop_of_the_day_is_linked_where_help_is(edition: Edition, rendered: Rendered) -> None:
    text = page(rendered, "help.md")
    stops = [(name, key) for name, job in edition.library.procedures.items() for key in job.stops]
    assert ("bake_the_loaves", "burnt_hand") in stops
    for name, key in stops:
        assert f'href="../work/{name}/#stop-{key}">' in text
        assert f'id="stop-{key}"' in rendered.files[f"work/{name}.md"]
    assert "Somebody is burnt</a>" in text


def test_every_need_of_a_job_is_among_the_things_to_bring(edition: Edition, rendered: Rendered) -> None:
    text = page(rendered, "bring.md")
    needs = {need for job in edition.library.procedures.values() for need in job.needs}
    assert {"oven_gloves", "scale"} < needs
    for need in needs:
        assert edition.library.supplies[need].title in text


def test_numbers_are_marked_for_repainting_and_shown_in_both_systems(rendered: Rendered) -> None:
    # 40 loaves of 900 g, wholemeal with 80 % water, 2 % salt: 36 kg / 1.82 = 19.78 kg of flour, which is 43.61 lb
    text = page(rendered, "numbers/dough.md")
    assert re.search(
        r'data-quantity="flour_mass" data-show="first">19\.8 kg</b>\s*<b[^>]*data-show="second">43\.6 lb</b>', text
    )


def beside(rendered: Rendered, job: str) -> dict[str, str]:
    """Where the arrows of a job's page lead."""
    head = rendered.files[f"work/{job}.md"].split("---")[1]
    lines = dict(line.split(": ", 1) for line in head.splitlines() if line)
    return {key: json.loads(lines[key])["address"] for key in ("before", "after") if key in lines}


def test_the_day_before_and_after_are_linked(rendered: Rendered) -> None:
    after = beside(rendered, "mix_the_dough")["after"]
    assert after.startswith("work/")
    assert f"{after.rstrip('/')}.md" in rendered.files


def test_nothing_leads_to_what_is_done_only_when_needed(edition: Edition) -> None:
    jobs = edition.library.procedures
    mend = jobs["mix_the_dough"].model_copy(update={"title": "Mend the dough", "order": 15, "when_needed": True})
    library = edition.library.model_copy(update={"procedures": {**jobs, "mend_the_dough": mend}})
    rendered = render_site(replace(edition, reading=replace(edition.reading, library=library)))
    mix, bake = "work/mix_the_dough/", "work/bake_the_loaves/"
    assert beside(rendered, "mix_the_dough") == {"after": bake}
    assert beside(rendered, "bake_the_loaves") == {"before": mix}
    assert beside(rendered, "mend_the_dough") == {"before": mix, "after": bake}
    assert re.findall(r'data-procedure="(\w+)"[^>]* data-when-needed', rendered.files["index.md"]) == ["mend_the_dough"]


def test_every_inner_link_leads_to_a_page_and_a_part_of_it(rendered: Rendered) -> None:
    made = {
        name: markdown.markdown(text.split("---\n", 2)[2], extensions=["attr_list"])
        for name, text in rendered.files.items()
        if name.endswith(".md")
    }
    parts = {name: set(re.findall(r'\bid="([^"]+)"', text)) for name, text in made.items()}
    seen = 0
    for name, text in made.items():
        here = "" if name == "index.md" else name.removesuffix("index.md").removesuffix(".md").rstrip("/") + "/"
        for link in re.findall(r'href="([^":]+)"', text):
            way, _, part = html.unescape(link).partition("#")
            target = here if not way else _resolve(here, way)
            file = addresses.file_of(target)
            if target.endswith((".pdf", "/.")) or "papers" in target:
                continue
            assert file in made, f"{name} -> {link}"
            assert not part or part in parts[file], f"{name} -> {link}"
            seen += 1
    assert seen > 50


def _resolve(here: str, way: str) -> str:
    from urllib.parse import urljoin

    return urljoin(f"http://site/{here}", way).removeprefix("http://site/")


def test_content_stays_text(bakery_content: Path, tmp_path: Path) -> None:
    content = Path(shutil.copytree(bakery_content, tmp_path / "content"))
    term = content / "shared/terms/terms.yml"
    term.write_text(
        'crumb: {title: "<b>*Crumb* & _co_</b> [x](javascript:y)", says: "<script>alert(1)</script> `x` *y*"}\n'
    )
    text = render_site(make_edition(content)).files["glossary.md"]
    made = markdown.markdown(text.split("---\n", 2)[2], extensions=["attr_list"])
    assert "<script>" not in made
    assert "<em>" not in made
    assert 'javascript:y"' not in made
    assert "&lt;b&gt;*Crumb* &amp; _co_&lt;/b&gt; [x](javascript:y)" in made


def test_a_missing_word_is_named(bakery_content: Path, tmp_path: Path) -> None:
    content = Path(shutil.copytree(bakery_content, tmp_path / "content"))
    words = content / "shared/words/pages.yml"
    lines = words.read_text().splitlines(keepends=True)
    words.write_text("".join(line for line in lines if not line.startswith(("title_plan:", "plan_how:"))))
    with pytest.raises(ProblemsFound) as found:
        render_site(make_edition(content))
    assert [problem.fault for problem in found.value.problems] == [
        "the word `plan_how` is missing",
        "the word `title_plan` is missing",
    ]


def test_a_phone_number_can_be_dialled() -> None:
    from generator.rendering.views import Views

    number = Views.phone_number
    assert number(None, "Ana, 555-0110") == "5550110"  # type: ignore[arg-type]
    assert number(None, "+1 (970) 555 0111 by day") == "+19705550111"  # type: ignore[arg-type]
    assert number(None, "(970) 555-0112") == "9705550112"  # type: ignore[arg-type]
    assert number(None, "Ana (barn 2) 555-0110") == "5550110"  # type: ignore[arg-type]
    assert number(None, "911") == "911"  # type: ignore[arg-type]
    assert number(None, "radio 2") == ""  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("here", "there", "written"),
    [
        ("", "plan/", "plan/"),
        ("", "plan/#crew", "plan/#crew"),
        ("work/mix/", "", "../../"),
        ("work/mix/", "work/bake/", "../bake/"),
        ("work/mix/", "numbers/dough/#flour", "../../numbers/dough/#flour"),
        ("plan/", "plan/#crew", "#crew"),
    ],
)
def test_addresses_are_relative(here: str, there: str, written: str) -> None:
    assert addresses.between(here, there) == written


def test_the_manifest_stands_for_one_site_of_a_host(rendered: Rendered, edition: Edition) -> None:
    manifest = json.loads(rendered.files["manifest.webmanifest"])
    assert edition.library.this_farm.site_address.endswith(manifest["id"])
    assert manifest["start_url"] == manifest["scope"] == "./"
    assert {icon["sizes"] for icon in manifest["icons"]} >= {"192x192", "512x512"}
    assert any(icon["purpose"] == "maskable" for icon in manifest["icons"])


def test_the_same_content_gives_the_same_files(bakery_content: Path, rendered: Rendered) -> None:
    assert render_site(make_edition(bakery_content)).files == rendered.files
