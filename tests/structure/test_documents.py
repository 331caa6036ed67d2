import re
from pathlib import Path

import pytest

from generator.pipeline.order import HERE

LOCKS = sorted((HERE / "requirements").glob("*.lock"))
WANTED = sorted((HERE / "requirements").glob("*.in"))


def text(name: str) -> str:
    return (HERE / name).read_text(encoding="utf-8")


def test_ci_only_calls_the_command_of_the_readme() -> None:
    steps = [line for line in text(".ci/run").splitlines() if line and not line.startswith("#")]
    assert steps == ['cd "$(dirname "$0")/.." && exec python3 run.py test']
    assert "\n    python3 run.py test\n" in text("README.md")


def test_the_licence_is_the_one_that_the_project_declares() -> None:
    assert text("LICENSE").startswith("MIT License\n")
    assert 'license = "MIT"' in text("pyproject.toml")


@pytest.mark.parametrize("path", ["README.md", "DEVELOPERS.md", "CHANGELOG.md", *map(str, WANTED)])
def test_links_of_documents_lead_somewhere(path: str) -> None:
    for target in re.findall(r"\]\((?!https?://)([^)#]+)", text(path)):
        assert (HERE / target).exists(), target


@pytest.mark.parametrize("record", sorted((HERE / "decisions").glob("0*.md")), ids=lambda path: path.stem)
def test_each_decision_has_all_its_parts(record: Path) -> None:
    part = r"^(?:# |Date|\*\*Context|\*\*Decision|\*\*Consequence|\*\*Look again)"
    parts = re.findall(part, record.read_text(encoding="utf-8"), re.MULTILINE)
    assert parts == ["# ", "Date", "**Context", "**Decision", "**Consequence", "**Look again"]


@pytest.mark.parametrize("lock", LOCKS, ids=lambda path: path.name)
def test_locks_pin_exactly_with_hashes_and_name_no_host(lock: Path) -> None:
    content = lock.read_text()
    assert "://" not in content
    packages = re.split(r"\n(?=[a-z0-9])", "\n" + content.split("\n", 2)[2].lstrip("\n"))[1:]
    assert len(packages) > 20
    for package in packages:
        assert re.match(r"[a-z0-9.-]+(\[[a-z,]+\])?==\S+ ", package), package
        assert "--hash=sha256:" in package


@pytest.mark.parametrize("wanted", WANTED, ids=lambda path: path.name)
def test_each_package_has_a_reason_and_a_pin(wanted: Path) -> None:
    lock = wanted.with_suffix(".lock").read_text()
    for line in wanted.read_text().splitlines():
        if line.startswith(("#", "-r")):
            continue
        package, _, reason = line.partition("#")
        assert len(reason.split()) >= 3, line
        assert f"\n{re.split('[=<>]', package)[0].strip()}==" in lock


def test_what_serves_is_pinned_the_same_for_tests() -> None:
    """Some are wanted with extras by tests alone, as `urllib3[socks]`; the version is the same."""
    pins = [set(re.findall(r"^([^\s\[=]+)\S*==(\S+)", lock.read_text(), re.MULTILINE)) for lock in LOCKS]
    assert pins[0] < pins[1]
