"""One sheet for all pages, and what may stay in it."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.problems import ProblemsFound
from generator.publishing.looks import SHEET, gather_looks, only_used, read_vocabulary

PAGE = '<!doctype html><html><head>\n{}</head><body class="sheet"><p id="top">.unwritten</p></body></html>'
LINK = '<link rel="stylesheet" href="{}">\n'


@pytest.mark.parametrize(
    ("sheet", "used"),
    [
        (".sheet{a:b}.other{c:d}", ".sheet{a:b}"),
        (".other, p.sheet > #top{a:b}", "p.sheet > #top{a:b}"),
        ("p:not(.other):hover::before{a:b}", "p:not(.other):hover::before{a:b}"),
        (".unwritten{a:b}", ""),
        ("[data-x=other] p{a:b}", "[data-x=other] p{a:b}"),
        ("table p{a:b}", ""),
        (".step--done{a:b}.step_done{a:b}", ".step--done{a:b}"),
        ("@media print{.other{a:b}}@media screen{.sheet{a:b}.other{a:b}}", "@media screen{.sheet{a:b}}"),
        ("@keyframes other{from{a:b}}", "@keyframes other{from{a:b}}"),
        ('@charset "UTF-8";p{a:b}', "p{a:b}"),
        ("/* why */p{background:url(data:a;b,c)}", "p{background:url(data:a;b,c)}"),
    ],
)
def test_a_rule_stays_where_something_may_match_it(sheet: str, used: str) -> None:
    vocabulary = read_vocabulary([PAGE.format("")], ['element("b", { class: `step step--${state}` })'])
    assert only_used(sheet, vocabulary) == used


def test_what_is_no_rule_is_told_with_its_line() -> None:
    with pytest.raises(ProblemsFound, match=r"plan\.css:2: this is no style rule"):
        only_used("p{a:b}\n.sheet", read_vocabulary([], []), "plan.css")


def test_pages_ask_for_one_sheet_and_for_what_is_theirs_alone(tmp_path: Path) -> None:
    (tmp_path / "a/b").mkdir(parents=True)
    (tmp_path / "look").mkdir()
    for name in ("one", "two", "own"):
        (tmp_path / f"look/{name}.css").write_text(f"p{{content:{name}}}\n")
    (tmp_path / "look/drawn.css").write_text("p{background:url(drawn.svg)}\n")
    for page, up, names in (
        ("index.html", "", "one two"),
        ("a/b/index.html", "../../", "one two own drawn"),
        ("404.html", "/farm/", "one two"),
    ):
        links = "".join(LINK.format(f"{up}look/{name}.css") for name in names.split())
        (tmp_path / page).write_text(PAGE.format(links))
    gather_looks(tmp_path)
    assert (tmp_path / SHEET).read_text() == "p{content:one}\np{content:two}"
    assert (tmp_path / "index.html").read_text() == PAGE.format(LINK.format(SHEET))
    own = '<style data-sheet="../../look/own.css">\np{content:own}\n</style>\n'
    drawn = LINK.format("../../look/drawn.css")
    assert (tmp_path / "a/b/index.html").read_text() == PAGE.format(LINK.format(f"../../{SHEET}") + own + drawn)
    assert (tmp_path / "look/own.css").read_text() == "p{content:own}", "for programs that bring it along"
    assert (tmp_path / "404.html").read_text() == PAGE.format(LINK.format(f"/farm/{SHEET}"))
    assert sorted(path.name for path in (tmp_path / "look").iterdir()) == ["all.css", "drawn.css", "own.css"]


def test_what_became_of_a_sheet_is_remembered_until_a_page_has_another_of_its_words(tmp_path: Path) -> None:
    memory = tmp_path / "memory"

    def gathered(name: str, words: str) -> str:
        site = tmp_path / name
        (site / "look").mkdir(parents=True)
        (site / "look/one.css").write_text(".sheet{a:b}.other{c:d}")
        (site / "index.html").write_text(PAGE.format(LINK.format("look/one.css")) + words)
        gather_looks(site, memory)
        return (site / SHEET).read_text()

    assert gathered("first", "") == gathered("second", '<i class="elsewhere">') == ".sheet{a:b}"
    (kept,) = memory.iterdir()
    assert gathered("third", '<i class="other">') == ".sheet{a:b}.other{c:d}"
    assert len(list(memory.iterdir())) == 2
    kept.write_bytes(kept.read_bytes()[:-1] + b"~")
    assert gathered("fourth", "") == ".sheet{a:b}"
