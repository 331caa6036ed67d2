"""What is covered: counted for a small trade by hand, and shown on its page."""

import pytest

from generator.pipeline.order import Order
from generator.rendering import Edition, render_site
from generator.telling.coverage import covered
from tests.rendering.conftest import make_edition

CHOICES = """\
flour_kind:
  title: Flour
  group: dough
  default: white
  covers: true
  options:
    white: {title: White}
    wholemeal: {title: Wholemeal, values: {water_share: {value: 80 percent, source: common practice}}}
    spelt: {title: Spelt, values: {water_share: {value: 70 percent, source: from memory}}}
    rye: {title: Rye}
"""
GLAZE = """\
glaze:
  title: Glaze
  verb: Glaze
  phase: morning
  order: 30
  who: Anyone
  purpose: Shine.
  good: It shines.
  steps:
    brush: {action: Cover the crust with milk., only: {flour_kind: [white, spelt]}, source: from memory}
"""


@pytest.fixture
def edition(bakery: Order) -> Edition:
    """The bakery with flours that content has the page count, and a procedure for some of them."""
    (bakery.shared / "choices/choices.yml").write_text(CHOICES, encoding="utf-8")
    (bakery.shared / "procedures/glaze.yml").write_text(GLAZE, encoding="utf-8")
    return make_edition(bakery.content)


def test_each_option_is_counted_with_what_it_lacks(edition: Edition) -> None:
    parts = covered(edition)
    ((choice, options),) = parts["axes"]
    told = {
        each.option.title: (each.complete, each.partial, each.missing, each.defaults, each.from_memory)
        for each in options
    }
    assert choice.title == "Flour"
    assert told == {
        "White": (3, 0, (), (), ()),
        "Wholemeal": (2, 0, ("glaze",), (), ()),
        "Spelt": (2, 1, (), (), ("water_share",)),
        "Rye": (1, 1, ("glaze",), ("water_share",), ()),
    }
    assert dict(parts["remembered"])["choices/flour_kind"] == 1
    assert dict(parts["remembered"])["procedures/glaze"] == 1
    assert parts["there"] == parts["total"]


def test_the_page_says_what_is_missing(edition: Edition) -> None:
    page = render_site(edition).files["coverage.md"]
    assert '<th scope="row">Rye</th><td>1</td><td>1</td><td>1</td>' in page
    assert "<p>No row: Glaze.</p>" in page
    assert '<li><span class="code">procedures/glaze</span> 1</li>' in page
