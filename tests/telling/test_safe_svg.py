"""A drawing becomes part of a page: shapes and words pass as they are, anything else is refused by name."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.problems import ProblemsFound
from generator.telling.safe_svg import SHAPES, read_svg

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">'
MADE_OF = f"    hint: a drawing is made of {', '.join(sorted(SHAPES))}, and has no links, styles or scripts"


def drawn(folder: Path, inside: str, head: str = HEAD) -> Path:
    file = folder / "oven.svg"
    file.write_text(f"{head}{inside}</svg>\n", encoding="utf-8")
    return file


def said(file: Path) -> str:
    with pytest.raises(ProblemsFound) as found:
        read_svg(file)
    return str(found.value)


def test_shapes_and_words_pass_as_they_are(tmp_path: Path) -> None:
    inside = '<defs><pattern id="p" width="2"/></defs><g fill="url(#p)"><path d="M0 0h9"/><text x="1">Door</text></g>'
    assert read_svg(drawn(tmp_path, inside)) == f"{HEAD}{inside}</svg>"


@pytest.mark.parametrize("start", ["<!DOCTYPE svg>", '<?xml version="1.0"?>', "<!-- drawn by hand -->"])
def test_nothing_stands_before_the_drawing(start: str, tmp_path: Path) -> None:
    assert said(drawn(tmp_path, "", start + HEAD)) == (
        "oven.svg: has more than a drawing in it\n    hint: begin with <svg> and end with </svg>"
    )


def test_what_is_broken_is_said_with_its_place(tmp_path: Path) -> None:
    found = said(drawn(tmp_path, "\n<g><path></g>"))
    assert found.startswith("oven.svg: is no SVG: ")
    assert "line 2" in found
    assert found.endswith("hint: open it in a browser to find the place")


@pytest.mark.parametrize(
    ("inside", "name"),
    [
        ("<script>alert(1)</script>", "script"),
        ("<foreignObject/>", "foreignObject"),
        ("<image/>", "image"),
        ('<g onload="alert(1)"/>', "onload"),
        ('<g style="fill:red"/>', "style"),
        ('<path href="#p"/>', "href"),
        ("<SCRIPT>alert(1)</SCRIPT>", "SCRIPT"),
        ("<Path/>", "Path"),
        ('<g ONLOAD="alert(1)"/>', "ONLOAD"),
        ('<g oNclick="alert(1)"/>', "oNclick"),
        ('<g STYLE="fill:red"/>', "STYLE"),
        ('<path HREF="#p"/>', "HREF"),
        ('<g xmlns:x="http://www.w3.org/1999/xlink"><path x:href="#p"/></g>', "{http://www.w3.org/1999/xlink}href"),
        ('<g xmlns:x="http://example.org"><path x:onload="alert(1)"/></g>', "{http://example.org}onload"),
        ('<g xmlns:x="http://www.w3.org/1999/xhtml"><x:g/></g>', "{http://www.w3.org/1999/xhtml}g"),
        ('<path fill="url(https://example.org/p)"/>', "fill"),
        ('<path d="JavaScript:alert(1)"/>', "d"),
        ('<path d="data:text/plain,x"/>', "d"),
        (r'<path mask="\75rl(example.org)"/>', "mask"),  # CSS reads `url` there
        ("<path cursor=\"image-set('//example.org/p')\"/>", "cursor"),
        ('<text x="1>2">" onload="alert(1)"</text>', "x"),  # who looks for the end of a tag would find it too early
    ],
)
def test_anything_else_is_refused_by_name(inside: str, name: str, tmp_path: Path) -> None:
    assert said(drawn(tmp_path, inside)) == f"oven.svg: `{name}` is not allowed\n{MADE_OF}"


def test_all_that_is_refused_is_said_at_once(tmp_path: Path) -> None:
    found = said(drawn(tmp_path, '<style/><g onclick="x"/>'))
    assert "`style` is not allowed" in found
    assert "`onclick` is not allowed" in found


def test_a_drawing_that_is_no_text_is_said(tmp_path: Path) -> None:
    file = tmp_path / "oven.svg"
    file.write_bytes(HEAD.encode() + b"<title>Br\xf6tchen</title></svg>")
    assert said(file) == (
        f"{file}:1: not UTF-8: byte 0xF6 at offset {len(HEAD) + 9}\n    hint: save the file as UTF-8 in your editor"
    )
