import time

import pytest

from generator.pipeline.progress import Progress


def test_what_is_quick_says_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    with Progress(patience=0.2) as say:
        say("Reading")
        say("Writing")
    time.sleep(0.4)
    assert capsys.readouterr() == ("", "")


def test_what_lasts_is_told_once_on_the_error_stream(capsys: pytest.CaptureFixture[str]) -> None:
    with Progress(patience=0.05) as say:
        say("Reading")
        time.sleep(0.3)
        say("Writing")
    assert capsys.readouterr() == ("", "Reading ...\n")
