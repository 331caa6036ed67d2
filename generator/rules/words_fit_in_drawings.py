"""A phone brings letters of its own: words of a drawing must have room for wide ones, and not stand on each other."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple
from xml.etree.ElementTree import Element, fromstring

from generator.problems import ProblemsFound
from generator.reading.translation import Translation
from generator.rules.inspection import Finding, Inspection
from generator.telling.drawings import Drawings
from generator.telling.edition import Edition
from generator.telling.figures import Figures
from generator.telling.wide_letters import width_of

BETWEEN = 3
"""As much as keeps two words apart."""
REMEDY = "shorten it, part it in two lines, or move it"
_NUMBER = re.compile(r"-?\d*\.?\d+")
_BOLD = re.compile(r"bold|[6-9]00")


class _Box(NamedTuple):
    text: str
    left: float
    right: float
    top: float
    bottom: float


def words_fit_in_drawings(inspection: Inspection) -> Iterator[Finding]:
    """In wide letters every text of a drawing keeps inside it and off its other texts, in each language of the farm."""
    reading, workbook = inspection.reading, inspection.workbook
    settings = workbook.settler.settle(workbook.plan, {})
    day = workbook.compute(settings)
    for language in inspection.library.this_farm.languages:
        translate = Translation.of(language, [reading.shared, reading.farm]).text
        edition = Edition(reading, workbook.book, workbook, settings, day, translate, language)
        drawings = Drawings(edition, Figures(edition))
        for name in _drawn(inspection):
            for fault, hint in crowded(drawings, name):
                yield Finding("pictures", name, (), f"`{name}.svg`: {fault}", hint)


def _drawn(inspection: Inspection) -> Iterator[str]:
    """Not the charts, whose words are placed by ours, nor what another rule misses."""
    for name, picture in inspection.library.pictures.items():
        if picture.chart is None and inspection.reading.file("pictures", f"{name}.svg"):
            yield name


def crowded(drawings: Drawings, name: str) -> Iterator[tuple[str, str]]:
    """What is wrong with the room of a drawing's texts, each with its remedy; or with the drawing itself."""
    try:
        root = fromstring(drawings.for_paper(name)["svg"])
    except ProblemsFound as found:
        yield from ((problem.fault, problem.hint) for problem in found.problems)
        return
    boxes = list(_boxes(root))
    edges = [float(edge) for edge in _NUMBER.findall(root.get("viewBox", ""))]
    if boxes and len(edges) != 4:
        yield "has words and no `viewBox`", 'give it one, such as viewBox="0 0 420 260"'
        return
    for box in boxes:
        if (over := _over(box, *edges)) > 0:
            yield f"“{box.text}” sticks out by {over:.0f} in wide letters", f"{REMEDY} inward"
    for one, other in combinations(boxes, 2):
        if _meet(one, other):
            yield f"“{one.text}” and “{other.text}” meet in wide letters", f"{REMEDY} away"


def _boxes(element: Element, size: float = 15, bold: bool = False, anchor: str = "start") -> Iterator[_Box]:
    """Of all texts but those that are turned or moved: their place is not that of their numbers."""
    if element.get("transform"):
        return
    size = _number(element, "font-size", size)
    bold = bool(_BOLD.match(element.get("font-weight", "bold" if bold else "")))
    anchor = element.get("text-anchor", anchor)
    text = element.text or ""
    if element.tag.endswith("text") and text.strip():
        wide = width_of(text, size, bold=bold)
        left = _number(element, "x", 0) - wide * {"middle": 0.5, "end": 1}.get(anchor, 0)
        line = _number(element, "y", 0)
        yield _Box(text, left, left + wide, line - 0.76 * size, line + 0.24 * size)
    for inner in element:
        yield from _boxes(inner, size, bold, anchor)


def _number(element: Element, name: str, usual: float) -> float:
    found = _NUMBER.match(element.get(name, ""))
    return float(found[0]) if found else usual


def _over(box: _Box, left: float, top: float, wide: float, high: float) -> float:
    return max(left - box.left, box.right - left - wide, top - box.top, box.bottom - top - high)


def _meet(one: _Box, other: _Box) -> bool:
    apart = one.right + BETWEEN > other.left and other.right + BETWEEN > one.left
    return apart and one.bottom > other.top and other.bottom > one.top
