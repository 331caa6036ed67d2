"""Sentences as pages show them."""

import pytest

from generator.telling.figures import Figures
from generator.telling.sentences import Sentences
from tests.product import product_edition

NO_BREAK = "\u00a0"


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("Within 3 % at 40 °C.", f"Within 3{NO_BREAK}% at 40{NO_BREAK}°C."),
        ("Some 5 birds, a % sign and 6% stay.", "Some 5 birds, a % sign and 6% stay."),
        ("Less < 4 °F", f"Less &lt; 4{NO_BREAK}°F"),
    ],
)
def test_no_line_begins_with_the_sign_of_a_number(written: str, shown: str) -> None:
    edition = product_edition()
    assert Sentences(edition, Figures(edition)).html(written) == shown
