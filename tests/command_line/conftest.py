"""The command line as a person meets it: words in; status, output and error lines out."""

from __future__ import annotations

import signal
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


@pytest.fixture(scope="session", autouse=True)
def _commands_hear_ctrl_c() -> None:
    """Where a shell runs the tests in its background, they and the commands they start would be deaf to it."""
    if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
        signal.signal(signal.SIGINT, signal.default_int_handler)


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
