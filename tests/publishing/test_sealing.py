"""Sealing, part by part, on small sites written here."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from pathlib import Path

import pytest

from generator.problems import ProblemsFound
from generator.publishing.icons import SIZES, draw_icons
from generator.publishing.keeping import kept_files, write_worker
from generator.publishing.policy import policy, set_policy
from generator.publishing.trimming import trim, without_colours, without_comments, without_margins

PAGE = '<!doctype html><html><head><meta charset="utf-8"></head><body>{}</body></html>'
SITE_MAP = "<urlset xmlns='http://www.sitemaps.org/schemas/sitemap/0.9'><url><loc>https://farm.example/a/b/</loc></url><url><loc>https://farm.example/a/</loc></url></urlset>"


@pytest.fixture
def site(tmp_path: Path) -> Path:
    (tmp_path / "plan").mkdir()
    (tmp_path / "index.html").write_text(PAGE.format("<script>one()</script>"))
    (tmp_path / "plan/index.html").write_text(
        PAGE.format('<script type="application/json">{"a":1}</script><script src="x.js"></script>')
    )
    (tmp_path / "404.html").write_text(PAGE.format('<script>two()</script><style data-sheet="own.css">\np{}\n</style>'))
    (tmp_path / "sitemap.xml").write_text(SITE_MAP)
    (tmp_path / "worker.js").write_text("// keeps\n/* the list of files */\nstart();\n")
    (tmp_path / "worker_off.js").write_text("stop();\n")
    (tmp_path / "phone").mkdir()
    (tmp_path / "phone/main.js").write_text("start();\n")
    return tmp_path


def test_each_page_gets_the_policy_of_all_pages(site: Path) -> None:
    set_policy(site)
    lines = {
        re.search(r'<meta http-equiv="Content-Security-Policy" content="([^"]+)">', p.read_text())[1]
        for p in site.rglob("*.html")
    }  # type: ignore[index]
    assert len(lines) == 1
    line = lines.pop()
    for script in ("one()", "two()"):
        assert f"'sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}'" in line
    scripts, styles = (found for found in line.split("; ") if found.startswith(("script-src", "style-src")))
    assert scripts.count("sha256-") == 2
    digest = base64.b64encode(hashlib.sha256(b"\np{}\n").digest()).decode()
    assert styles == f"style-src 'self' 'sha256-{digest}'"
    assert "default-src 'none'" in line
    assert "unsafe" not in line


def test_a_policy_without_scripts_in_pages_names_no_hash() -> None:
    assert "script-src 'self';" in policy(["<p>nothing</p>"])


def test_a_page_without_a_character_set_is_a_fault(site: Path) -> None:
    (site / "plan/index.html").write_text("<p>bare</p>")
    with pytest.raises(ProblemsFound, match=r"plan/index\.html: the page has no character set"):
        set_policy(site)


def test_the_worker_knows_every_file_by_its_digest(site: Path) -> None:
    write_worker(site)
    text = (site / "worker.js").read_text()
    files = json.loads(re.search(r"^const files = (.*);$", text, re.MULTILINE)[1])  # type: ignore[index]
    assert set(files) == {"", "plan/", "404.html", "phone/main.js"}
    assert base64.b64decode(files["plan/"]) == hashlib.sha256((site / "plan/index.html").read_bytes()).digest()[:12]
    assert text.endswith("start();\n")


def test_the_version_changes_with_a_byte_and_only_then(site: Path) -> None:
    template = (site / "worker.js").read_text()
    write_worker(site)
    first = (site / "worker.js").read_text()
    (site / "worker.js").write_text(template)
    write_worker(site)
    assert (site / "worker.js").read_text() == first
    (site / "worker.js").write_text(template)
    (site / "404.html").write_text("other")
    write_worker(site)
    assert (site / "worker.js").read_text() != first


def test_kept_files_leave_out_what_no_page_asks_for(site: Path) -> None:
    (site / "icons").mkdir()
    (site / "icons/512.png").write_bytes(b"large")
    (site / "icons/48.png").write_bytes(b"small")
    assert "icons/48.png" in kept_files(site)
    assert "icons/512.png" not in kept_files(site)


def test_trimming_leaves_programs_working(site: Path) -> None:
    (site / "assets/javascripts").mkdir(parents=True)
    (site / "assets/javascripts/bundle.js").write_text("go();")
    (site / "main.js").write_text("go();\n//# sourceMappingURL=main.js.map\n")
    (site / "main.js.map").write_text("{}")
    (site / "main.css").write_text("a{}\n/*# sourceMappingURL=main.css.map */\n")
    (site / "phone/go.js").write_text("// why\nif (a) {\n  go();\n\n}\n")
    (site / "look").mkdir()
    (site / "look/plan.css").write_text("/* why\n * so */\na{} /* behind a rule */\n")
    trim(site)
    assert (site / "look/plan.css").read_text() == "a{} /* behind a rule */\n"
    assert (site / "phone/go.js").read_text() == "if (a) {\ngo();\n}\n"
    assert not list(site.rglob("*.map"))
    assert not (site / "assets/javascripts").exists()
    assert (site / "main.js").read_text() == "go();"
    assert (site / "main.css").read_text() == "a{}"


@pytest.mark.parametrize(
    ("program", "shorter"),
    [
        ("// why\nlet a = 1;\n", "let a = 1;\n"),
        ("/** types */\nlet a = 1;\n", "let a = 1;\n"),
        ("/**\n * long\n * @param {string} a\n */\nlet a = 1;\n", "let a = 1;\n"),
        ('let a = "// not a comment";\n', 'let a = "// not a comment";\n'),
        ("let a = 1; // behind code\nlet b;\n", "let a = 1;\nlet b;\n"),
        ("if (a) { // behind code\n", "if (a) {\n"),
        ("let a = 1; // it's behind code\n", "let a = 1; // it's behind code\n"),
        ('let a = "b; // no comment";\n', 'let a = "b; // no comment";\n'),
        ("let a = `b; // no comment`;\n", "let a = `b; // no comment`;\n"),
        ("let a = /; // [^']/.test(b);\n", "let a = /; // [^']/.test(b);\n"),
        ("let a = b\n  /** @type {any} */ (c);\n", "let a = b\n  (c);\n"),
        ("let a = /** @type {any} */ (c);\n", "let a = (c);\n"),
        ("(/** @param {{a: 1 | 2}} b */ b) => 1;\n", "(b) => 1;\n"),
        ("let a = b /** so far */ * c;\n", "let a = b /** so far */ * c;\n"),
    ],
)
def test_comments_go_where_they_cannot_be_part_of_a_text(program: str, shorter: str) -> None:
    assert without_comments(program) == shorter


@pytest.mark.parametrize(
    ("page", "shorter"),
    [
        ("<ul>\n    <li>One\n\n  two</li>  \n</ul>\n", "<ul>\n<li>One\ntwo</li>\n</ul>\n"),
        ("<b>a</b>  <i>b</i>", "<b>a</b>  <i>b</i>"),
        ("<p>\n  <pre>\n  kept\n\n  so</pre>\n  </p>", "<p>\n<pre>\n  kept\n\n  so</pre>\n</p>"),
        ("<textarea rows=2>\n  a</textarea>\n\n<predicate>\n x", "<textarea rows=2>\n  a</textarea>\n<predicate>\nx"),
    ],
)
def test_margins_go_where_nobody_sees_them(page: str, shorter: str) -> None:
    assert without_margins(page) == shorter


def test_only_the_colours_that_the_site_wears_stay() -> None:
    red = "[data-md-color-primary=red]{--a:1}[data-md-color-accent=deep-purple] .x,[data-md-color-accent=red] .y{--b:2}"
    worn = "[data-md-color-primary=custom]{--a:3}"
    dark = "@media screen{[data-md-color-scheme=slate]{--c:4}" + worn + "}"
    assert without_colours(red + dark + red + worn) == dark + worn


def test_icons_in_every_size(tmp_path: Path) -> None:
    (tmp_path / "icon.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512"><path d="M0 0h512v512H0z" fill="red"/></svg>'
    )
    draw_icons(tmp_path)
    for size in SIZES:
        content = (tmp_path / f"icons/{size}.png").read_bytes()
        assert content[:8] == b"\x89PNG\r\n\x1a\n"
        assert (int.from_bytes(content[16:20]), int.from_bytes(content[20:24])) == (size, size)
    assert (tmp_path / "icons/maskable.png").is_file()
    assert not (tmp_path / "icon.svg").exists()
