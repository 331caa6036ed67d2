"""The bill of materials: from a lock written here, and the one that is checked in."""

import json
import re

import pytest

from generator.command_line.parts import BILL
from generator.pipeline.order import HERE
from generator.publishing.parts import bill_of_materials, licence_of, parts_of
from tests.command_line.conftest import Run, run

__all__ = ["run"]
ONE, OTHER = "a" * 64, "b" * 64
LOCK = f"""# made
#    see requirements/README.md
babel==2.18.0 \\
    --hash=sha256:{ONE} \\
    --hash=sha256:{OTHER}
    # via
    #   -r requirements/serve.in
    #   mkdocs
click==8.5.1 \\
    --hash=sha256:{OTHER}
    # via mkdocs
mkdocs==1.6.1 ; python_version >= "3.11" \\
    --hash=sha256:{ONE}
    # via -r requirements/serve.in
"""


def test_parts_are_read_off_the_lock() -> None:
    babel, click, mkdocs = parts_of(LOCK)
    assert (babel.name, babel.version, babel.hashes, babel.needed_by) == (
        "babel",
        "2.18.0",
        (ONE, OTHER),
        ("", "mkdocs"),
    )
    assert (click.address, click.needed_by) == ("pkg:pypi/click@8.5.1", ("mkdocs",))
    assert (mkdocs.version, mkdocs.needed_by) == ("1.6.1", ("",))


def test_the_bill_says_what_needs_what() -> None:
    bill = json.loads(bill_of_materials(LOCK, "cooler", "1.2.3"))
    assert (bill["bomFormat"], bill["specVersion"]) == ("CycloneDX", "1.6")
    assert bill["metadata"]["component"]["version"] == "1.2.3"
    needed = {each["ref"]: each["dependsOn"] for each in bill["dependencies"]}
    assert needed == {
        "cooler": ["pkg:pypi/babel@2.18.0", "pkg:pypi/mkdocs@1.6.1"],
        "pkg:pypi/babel@2.18.0": [],
        "pkg:pypi/click@8.5.1": [],
        "pkg:pypi/mkdocs@1.6.1": ["pkg:pypi/babel@2.18.0", "pkg:pypi/click@8.5.1"],
    }
    assert bill["components"][0]["hashes"][1] == {"alg": "SHA-256", "content": OTHER}
    assert bill["components"][1]["licenses"] == [{"expression": "BSD-3-Clause"}]


def test_the_one_that_is_checked_in_is_fresh(run: Run) -> None:
    answer = run("parts", "--check")
    assert (answer.status, answer.err) == (0, "")
    bill = json.loads(BILL.read_text(encoding="utf-8"))
    pinned = re.findall(r"^\S+==", (HERE / "requirements/serve.lock").read_text(), re.MULTILINE)
    assert len(bill["components"]) == len(pinned) > 30
    assert "not told" not in BILL.read_text(encoding="utf-8")


def test_a_stale_one_is_named(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("generator.command_line.parts.PACKAGES", HERE / "requirements/test.lock")
    answer = run("parts", "--check")
    assert answer.status == 1
    assert answer.err == "requirements/parts.cdx.json: is not up to date\n    hint: run `python3 run.py parts`\n"


@pytest.mark.parametrize("purpose", ["serve", "test"])
def test_each_package_that_we_chose_stands_in_the_table_with_its_licence(purpose: str) -> None:
    rows = re.findall(
        rf"^\| {purpose} \| (\S+) \| (.+) \|$", (HERE / "requirements/README.md").read_text(), re.MULTILINE
    )
    wanted = [line for line in (HERE / f"requirements/{purpose}.in").read_text().splitlines() if line[0] not in "#-"]
    assert [name for name, _ in rows] == [re.split(r"[=<> ]", line)[0] for line in wanted]
    for name, licence in rows:
        assert licence == licence_of(name)
