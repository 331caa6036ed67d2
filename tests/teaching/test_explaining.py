"""Words of the glossary are linked once, as whole words, and not where they mean something else."""

from __future__ import annotations

import re

import pytest

from generator.teaching.explaining import Explainer, Glossary
from generator.telling.edition import Edition
from generator.telling.figures import Figures
from generator.telling.sentences import Sentences


@pytest.fixture
def explain(edition: Edition) -> Explainer:
    return Explainer(Glossary(edition), Sentences(edition, Figures(edition)), lambda address: f"/{address}")


def linked(html: str) -> list[str]:
    return re.findall(r'<a class="term" href="/glossary/#(\w+)">', html)


def test_only_the_first_mention_is_linked(explain: Explainer) -> None:
    first = explain.html("Slush touches the bird. Slush is cold.")
    assert first == '<a class="term" href="/glossary/#slush">Slush</a> touches the bird. Slush is cold.'
    assert linked(explain.html("More slush.")) == []


def test_numbers_stay_numbers_and_text_stays_text(explain: Explainer) -> None:
    found = explain.html("<b>Slush</b> for {bleed_time}.")
    assert found.startswith("&lt;b&gt;")
    assert '<b data-quantity="bleed_time">' in found


@pytest.mark.parametrize(
    ("text", "terms"),
    [
        ("Hold it under cool running water.", []),
        ("A small lot first. Then write the lot.", ["lot"]),
        ("Pour it into a hollow of the chips.", []),
        ("Conest and acone are no words.", []),
        ("Two cones.", ["cone"]),
        ("A hard scald.", ["hard_scald"]),
        ("Keep rats and flies off feed.", []),
        ("Draw the site.", []),
    ],
)
def test_words_that_mean_something_else_are_let_be(explain: Explainer, text: str, terms: list[str]) -> None:
    assert linked(explain.html(text)) == terms


def test_what_no_link_explains_is_listed(explain: Explainer) -> None:
    explain.html("Slush.")
    assert explain.others(["Into the slush.", "The gizzard, then the vent, then the gizzard."]) == ["gizzard", "vent"]
