"""Words of drawings keep their room in any phone's letters: reckoned in a font wider than those of phones."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple
from xml.etree.ElementTree import Element, fromstring

import pytest

from generator.telling.drawings import Drawings
from generator.telling.figures import Figures
from tests.product import product_edition

# How wide DejaVu Sans and its bold are from the space to the tilde, in thousandths of their size: from the font's own
# tables (version 2.37).
PLAIN = (
    "318 401 460 838 636 950 780 275 390 390 500 838 318 361 318 337 636 636 636 636 636 636 636 636 636 636 "
    "337 337 838 838 838 531 1000 684 686 698 770 632 575 775 752 295 295 656 557 863 748 787 603 787 695 635 "
    "611 732 684 989 685 611 685 390 337 390 838 500 500 613 635 550 635 615 352 635 634 278 278 579 278 974 "
    "634 612 635 635 411 521 392 634 592 818 592 592 525 636 337 636 838"
)
BOLD = (
    "348 456 521 838 696 1002 872 306 457 457 523 838 380 415 380 365 696 696 696 696 696 696 696 696 696 696 "
    "400 400 838 838 838 580 1000 774 762 734 830 683 683 821 837 372 372 775 637 995 837 850 733 850 770 720 "
    "682 812 774 1103 771 724 725 457 365 457 838 500 500 675 716 593 716 678 435 716 712 343 343 665 343 "
    "1042 712 687 716 716 493 595 478 712 652 924 645 652 582 712 365 712 838"
)
WIDTHS = {
    weight: dict(zip(map(chr, range(32, 127)), map(int, row.split()), strict=True))
    for weight, row in (("", PLAIN), ("bold", BOLD))
}
BETWEEN = 3
"""As much as keeps two words apart."""


class Box(NamedTuple):
    text: str
    left: float
    right: float
    top: float
    bottom: float


def boxes(element: Element, size: float = 15, weight: str = "", anchor: str = "start") -> Iterator[Box]:
    size = float(element.get("font-size", size))
    weight, anchor = element.get("font-weight", weight), element.get("text-anchor", anchor)
    if element.tag.endswith("}text"):
        text = element.text or ""
        wide = sum(WIDTHS[weight].get(sign, 838) for sign in text.replace("\u00a0", " ")) * size / 1000
        left = float(element.get("x", 0)) - wide * {"start": 0, "middle": 0.5, "end": 1}[anchor]
        line = float(element.get("y", 0))
        yield Box(text, left, left + wide, line - 0.76 * size, line + 0.24 * size)
    for inner in element:
        assert not element.get("transform") or not inner.tag.endswith("}text"), "its place is not that of its numbers"
        yield from boxes(inner, size, weight, anchor)


def meet(one: Box, other: Box) -> bool:
    apart = one.right + BETWEEN > other.left and other.right + BETWEEN > one.left
    return apart and one.bottom > other.top and other.bottom > one.top


def crowded(svg: str) -> list[str]:
    root = fromstring(svg)
    _, _, wide, high = map(float, root.get("viewBox", "").split())
    all_of_them = list(boxes(root))
    outside = [f"leaves it: {box}" for box in all_of_them if box.left < 0 or box.right > wide or box.bottom > high]
    return outside + [f"meet: {one} {other}" for one, other in combinations(all_of_them, 2) if meet(one, other)]


EDITION = product_edition()


@pytest.mark.parametrize("name", EDITION.library.pictures)
def test_words_keep_inside_a_drawing_and_off_each_other(name: str) -> None:
    assert crowded(str(Drawings(EDITION, Figures(EDITION)).for_page(name))) == []


def test_words_that_have_no_room_are_seen() -> None:
    head = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50">'
    assert crowded(f'{head}<text x="1" y="20">Under</text><text x="52" y="20">over</text></svg>') == []
    (found,) = crowded(f'{head}<text x="1" y="20" font-weight="bold">Under</text><text x="51" y="20">over</text></svg>')
    assert found.startswith("meet: ")
    (found,) = crowded(f'{head}<text x="1" y="20">Under, over, then again</text></svg>')
    assert found.startswith("leaves it: ")
