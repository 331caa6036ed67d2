"""Words of drawings keep their room in any phone's letters: reckoned in a font wider than those of phones."""

from __future__ import annotations

import pytest

from generator.rules.words_fit_in_drawings import crowded
from generator.telling.drawings import Drawings
from generator.telling.figures import Figures
from generator.telling.wide_letters import width_of
from tests.product import product_edition

EDITION = product_edition()


@pytest.mark.parametrize("name", EDITION.library.pictures)
def test_words_keep_inside_a_drawing_and_off_each_other(name: str) -> None:
    """Charts too, which the rule leaves out."""
    assert list(crowded(Drawings(EDITION, Figures(EDITION)), name)) == []


def test_words_are_as_wide_as_the_table_of_the_font_says() -> None:
    """DejaVu Sans 2.37: U 732, n 634, d 635, e 615, r 411; bold U 812, n 712, d 716, e 678, r 493."""
    assert width_of("Under", 10, bold=False) == pytest.approx(30.27)
    assert width_of("Under", 10, bold=True) == pytest.approx(34.11)
    assert width_of("Ündér", 10, bold=False) == pytest.approx(30.27)
    assert width_of("a\u00a0a", 10, bold=False) == pytest.approx(15.44)  # a 613, space 318
