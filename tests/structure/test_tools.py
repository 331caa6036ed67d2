"""The tools that keep the house: floors, style and types."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from generator.pipeline.order import HERE

SCRIPTS = Path(sys.executable).parent


@pytest.mark.parametrize(
    "command",
    [["lint-imports", "--no-cache"], ["ruff", "check", "--no-cache"], ["mypy"]],
    ids=["floors", "style", "types"],
)
def test_finds_nothing(command: list[str]) -> None:
    program, *rest = command
    answer = subprocess.run([SCRIPTS / program, *rest], cwd=HERE, capture_output=True, text=True, check=False)
    assert answer.returncode == 0, answer.stdout + answer.stderr


@pytest.mark.parametrize("programs", ["phone", "worker"])
def test_types_of_phone_programs(programs: str) -> None:
    compiler = shutil.which("tsc")
    if not compiler:
        pytest.skip("the types of the phone's programs are not checked: `tsc` is missing")
    settings = HERE / "tests/structure/javascript" / f"{programs}.json"
    answer = subprocess.run([compiler, "--project", settings], cwd=HERE, capture_output=True, text=True, check=False)
    assert answer.returncode == 0, answer.stdout + answer.stderr
