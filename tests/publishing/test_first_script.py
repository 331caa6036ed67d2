"""The script that runs before anything is painted, put into pages."""

from pathlib import Path

import pytest

from generator.problems import ProblemsFound
from generator.publishing.first_script import put_first_script_in
from generator.publishing.policy import policy


def site_with(folder: Path, program: str) -> Path:
    (folder / "phone").mkdir()
    (folder / "phone/first.js").write_text(program)
    (folder / "work").mkdir()
    (folder / "index.html").write_text(
        '<p><script src="phone/first.js" data-site="."></script><script src="phone/a.js">'
    )
    (folder / "work/index.html").write_text('<script src="../phone/first.js" data-site=".."></script>')
    return folder


def test_each_page_has_it_with_its_own_way_to_the_site(tmp_path: Path) -> None:
    put_first_script_in(site_with(tmp_path, r"wear(/\d\1/)"))
    first = (tmp_path / "index.html").read_text()
    assert first == r'<p><script data-site=".">wear(/\d\1/)</script><script src="phone/a.js">'
    other = (tmp_path / "work/index.html").read_text()
    assert other == r'<script data-site="..">wear(/\d\1/)</script>'
    assert not (tmp_path / "phone/first.js").exists()
    assert policy([first]) == policy([first, other]), "one script, one hash"


def test_what_would_end_its_element_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ProblemsFound, match=r"phone/first\.js: holds `</script`"):
        put_first_script_in(site_with(tmp_path, 'say("</SCRIPT>")'))
