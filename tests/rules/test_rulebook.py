"""The rules: each says what it must, word for word (`cases/`), each is a file of its own, and pardons work."""

import inspect
from pathlib import Path

import pytest

import generator.rules
from generator.rules import RULES
from tests.workshop import Case, Workshop, cases

CASES = Path(__file__).parent / "cases"


@pytest.mark.parametrize("case", cases(CASES))
def test_said_word_for_word(workshop: Workshop, case: Case) -> None:
    assert workshop.try_out(case) == case.said


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.__name__)
def test_a_rule_has_a_file_a_name_a_specification_and_a_case(rule: object) -> None:
    assert rule.__module__ == f"generator.rules.{rule.__name__}"
    specification = inspect.getdoc(rule)
    assert specification
    assert "\n" not in specification
    assert (CASES / f"{rule.__name__}.txt").is_file()


def test_every_rule_in_the_folder_is_in_the_book() -> None:
    files = {path.stem for path in Path(generator.rules.__path__[0]).glob("*.py")}
    assert files - {"__init__", "rulebook", "inspection"} == {rule.__name__ for rule in RULES}
