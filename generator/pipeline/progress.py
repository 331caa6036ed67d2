"""Says what is going on when it takes long, and nothing when it is quick."""

from __future__ import annotations

import sys
from threading import Timer

PATIENCE = 1.0
"""Seconds of silence before a person wonders."""


class Progress:
    """`with Progress() as say: say("Reading the content")`: each step that lasts is told on the error stream."""

    def __init__(self, patience: float = PATIENCE) -> None:
        self._patience = patience
        self._timer = Timer(0, print)

    def __call__(self, step: str) -> None:
        """Ends the step before and begins this one."""
        self._timer.cancel()
        self._timer = Timer(self._patience, print, [f"{step} ..."], {"file": sys.stderr, "flush": True})
        self._timer.daemon = True
        self._timer.start()

    def __enter__(self) -> Progress:
        return self

    def __exit__(self, *_: object) -> None:
        self._timer.cancel()
