"""What bad content is told, word for word: the cases are plain text, in `cases/`."""

from pathlib import Path

import pytest

from tests.workshop import Case, Workshop, cases


@pytest.mark.parametrize("case", cases(Path(__file__).parent / "cases"))
def test_said_word_for_word(workshop: Workshop, case: Case) -> None:
    assert workshop.try_out(case) == case.said


def test_the_other_trade_is_clean(workshop: Workshop) -> None:
    assert workshop.said() == ""
