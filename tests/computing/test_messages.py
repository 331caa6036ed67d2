"""What writers of quantities, functions, measures and plans read, word for word; the cases are plain text."""

from pathlib import Path

import pytest

from tests.workshop import Case, Workshop, cases


@pytest.mark.parametrize("case", cases(Path(__file__).parent / "cases"))
def test_said_word_for_word(workshop: Workshop, case: Case) -> None:
    assert workshop.try_out(case) == case.said
