"""`serve`: the finished site, to the browsers of this machine."""

from __future__ import annotations

from argparse import Namespace
from importlib import import_module

from generator.command_line.ordering import read_order
from generator.pipeline.freshness import is_fresh, path_on_host
from generator.pipeline.progress import Progress
from generator.publishing.serving import SiteServer

PUBLISH = """
To have it on phones, put everything in {site}
on any https host; phones keep it after one visit and need no signal then. README.md tells how."""


def run(options: Namespace) -> int:
    """Builds where something changed, then serves until it is stopped."""
    order = read_order(options)
    if not is_fresh(order):
        with Progress() as say:
            import_module("generator.pipeline.story").build(order, say)  # takes a second to load, so only when needed
    with SiteServer(order.site, path_on_host(order), options.port) as server:
        print(f"The site is at {server.address}   (stop with Ctrl-C)")
        print(PUBLISH.format(site=order.site), flush=True)
        server.serve_forever()
    return 0
