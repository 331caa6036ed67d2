import re

import pytest

from generator.command_line.options import COMMANDS, read_options
from generator.pipeline.order import HERE

from .conftest import Run


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_has_help_worth_reading(command: str, run: Run) -> None:
    answer = run(command, "--help")
    assert answer.status == 0
    assert COMMANDS[command][1] in answer.out
    assert all(len(line) <= 120 for line in answer.out.splitlines())


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_stands_in_the_readme(command: str) -> None:
    assert re.search(rf"^\| `{command}` \| ", (HERE / "README.md").read_text(encoding="utf-8"), re.MULTILINE)


@pytest.mark.parametrize(
    ("words", "line"),
    [
        ([], "run.py: error: the following arguments are required: COMMAND"),
        (["serve", "--port", "0"], "argument --port: `0` is not a port: give a whole number from 1 to 65535"),
        (["serve", "--port", "http"], "argument --port: `http` is not a port: give a whole number from 1 to 65535"),
        (["build", "--fast"], "run.py build: error: unknown: --fast"),
        (["numbers", "--js"], "run.py numbers: error: unknown: --js"),
        (
            ["numbers", "--set", "altitude=1500", "m"],
            "run.py numbers: error: unknown: m; a value with a space needs quotes: --set 'ID=1500 m'",
        ),
        (["verify"], "run.py verify: error: the following arguments are required: ADDRESS"),
    ],
)
def test_what_cannot_be_meant_is_refused_in_one_line(words: list[str], line: str, run: Run) -> None:
    answer = run(*words)
    assert answer.status == 2
    assert answer.err.rstrip().endswith(line)


def test_words_after_test_are_handed_on() -> None:
    assert read_options(["test", "-k", "point", "tests/formula"]).rest == ["-k", "point", "tests/formula"]
