"""The command line as a person meets it: words in; status, output and error lines out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from generator.command_line.__main__ import main
from generator.pipeline.order import HERE

OTHER_TRADE = HERE / "tests/other_trade"


@dataclass(frozen=True)
class Answer:
    status: int
    out: str
    err: str


Run = Callable[..., Answer]


@pytest.fixture
def run(capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Run:
    monkeypatch.chdir(HERE)

    def answer(*words: str | Path) -> Answer:
        try:
            status = main([str(word) for word in words])
        except SystemExit as leaving:  # argparse leaves so
            status = int(leaving.code or 0)
        out, err = capfd.readouterr()
        assert "Traceback" not in out + err
        return Answer(status, out, err)

    return answer
