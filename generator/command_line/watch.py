"""`watch`: a preview for authors that is built again at every change of the content."""

from __future__ import annotations

import time
from argparse import Namespace
from pathlib import Path
from threading import Thread

from generator.command_line.findings import report
from generator.command_line.ordering import read_order
from generator.pipeline.freshness import path_on_host, stamp
from generator.pipeline.order import Order
from generator.pipeline.progress import Progress
from generator.pipeline.story import build
from generator.problems import ProblemsFound, about_file
from generator.publishing.serving import SiteServer

PAUSE = 0.4
"""Seconds between looks at the files; a person does not notice it."""


def run(options: Namespace) -> int:
    """Builds, serves, and builds again until it is stopped. The preview has a folder of its own below the build."""
    order = read_order(options).preview
    seen = stamp(order.written)
    _try_to_build(order)
    with SiteServer(order.site, path_on_host(order), options.port) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        print(f"The preview is at {server.address}   (reload the page after a change; stop with Ctrl-C)", flush=True)
        _build_at_changes(order, seen)
    return 0


def _build_at_changes(order: Order, seen: frozenset[tuple[Path, int, int]]) -> None:
    """Builds whenever the files are no longer as they were `seen` before the last build began."""
    while True:
        time.sleep(PAUSE)
        now = stamp(order.written)
        if now != seen:
            seen = now
            _try_to_build(order)


def _try_to_build(order: Order) -> None:
    start = time.monotonic()
    try:
        with Progress() as say:
            build(order, say, sealed=False)
    except ProblemsFound as found:
        report(found.problems)
    except OSError as fault:  # an editor may be just replacing a file, and when it has the files differ again
        report([about_file(fault)])
    else:
        print(f"{time.strftime('%H:%M:%S')}  built in {time.monotonic() - start:.1f} s", flush=True)
