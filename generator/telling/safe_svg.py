"""Reads drawings and lets nothing through that is not a plain shape or a word: they become part of pages."""

from __future__ import annotations

import re
from pathlib import Path
from xml.etree import ElementTree

from generator.problems import Place, Problem, ProblemsFound, as_shown
from generator.reading.text import read_text

SHAPES = {
    "svg",
    "g",
    "path",
    "circle",
    "ellipse",
    "rect",
    "line",
    "polyline",
    "polygon",
    "text",
    "tspan",
    "defs",
    "pattern",
    "title",
    "desc",
}
_NAMESPACE = "{http://www.w3.org/2000/svg}"
_ATTRIBUTE = re.compile(r"(?!on|style$|href$)[a-z][a-z0-9-]*", re.IGNORECASE)
"""HTML takes them in any case."""
_HARMFUL = re.compile(r"url\((?!#)|javascript:|data:|//|\\|>", re.IGNORECASE)
"""Addresses, what CSS reads as one, and the sign that ends a tag for those who look for its end."""


def read_svg(path: Path) -> str:
    """The text of a drawing. Raises ProblemsFound for what is not SVG, and for anything but shapes and words."""
    text, place = read_text(path).strip(), Place(path.name)
    if "<!" in text or "<?" in text:
        raise ProblemsFound([Problem(place, "has more than a drawing in it", "begin with <svg> and end with </svg>")])
    try:
        root = ElementTree.fromstring(text)
    except ElementTree.ParseError as fault:
        raise ProblemsFound([Problem(place, f"is no SVG: {fault}", "open it in a browser to find the place")]) from None
    refused = [name for element in root.iter() for name in _refused(element)]
    if refused:
        hint = f"a drawing is made of {', '.join(sorted(SHAPES))}, and has no links, styles or scripts"
        raise ProblemsFound(Problem(place, f"{as_shown(name)} is not allowed", hint) for name in refused)
    return text


def _refused(element: ElementTree.Element) -> list[str]:
    shape = element.tag.removeprefix(_NAMESPACE)
    attributes = [
        name for name, value in element.attrib.items() if not _ATTRIBUTE.fullmatch(name) or _HARMFUL.search(value)
    ]
    return [*([] if shape in SHAPES else [shape]), *attributes]
