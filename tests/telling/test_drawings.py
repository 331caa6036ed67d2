"""Drawings filled for pages and papers."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree

import pytest

from generator.telling.drawings import Drawings
from generator.telling.figures import Figures
from tests.product import product_edition

NAMESPACE = "{http://www.w3.org/2000/svg}"
HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">'


@pytest.mark.parametrize("written", ["Salt &amp; pepper", "Under 5 &lt; 6", "a &#62; b", "&quot;Now&quot;"])
def test_a_sign_written_as_an_entity_is_shown_as_that_sign(written: str, tmp_path: Path) -> None:
    """Pages and papers say what the drawing says, which here an XML reader tells."""
    edition = product_edition()
    name = next(name for name, picture in edition.library.pictures.items() if not picture.chart)
    own = tmp_path / f"pictures/{name}.svg"
    own.parent.mkdir()
    own.write_text(f'{HEAD}<text x="1">{written}</text></svg>', encoding="utf-8")
    edition = replace(edition, reading=replace(edition.reading, farm=tmp_path))
    made = Drawings(edition, Figures(edition))
    for svg in (made.for_paper(name)["svg"], str(made.for_page(name))):
        (text,) = ElementTree.fromstring(svg).iter(f"{NAMESPACE}text")
        assert text.text == ElementTree.fromstring(f"<text>{written}</text>").text
