"""`python -m generator.command_line COMMAND`, which run.py calls in its environment."""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Sequence
from importlib import import_module

from generator.command_line.findings import report
from generator.command_line.options import read_options
from generator.problems import ProblemsFound, about_file

FAULTS, INTERRUPTED = 1, 130


def main(words: Sequence[str]) -> int:
    """Does what `words` ask for; returns the exit status. A fault that a person can mend never shows a traceback."""
    options = read_options(words)
    try:
        # Only the module of the command is imported, so that `serve` with nothing to build starts at once.
        status: int = import_module(f"generator.command_line.{options.command}").run(options)
        sys.stdout.flush()
        return status
    except ProblemsFound as found:
        report(found.problems)
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # else Python complains while it leaves
    except KeyboardInterrupt:
        return INTERRUPTED
    except OSError as fault:
        report([about_file(fault)])
    return FAULTS


if __name__ == "__main__":
    gc.set_threshold(100_000, 50)  # content is many small things that stay: to look often for what can go takes long
    sys.exit(main(sys.argv[1:]))
