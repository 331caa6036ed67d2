"""`disk`: the site as a zip that opens from a disk or a stick."""

from __future__ import annotations

from argparse import Namespace
from importlib import import_module

from generator.command_line.ordering import read_order
from generator.pipeline.freshness import is_fresh, path_on_host
from generator.pipeline.progress import Progress
from generator.publishing.disk import copy_to_disk, pack
from generator.publishing.swapping import successor


def run(options: Namespace) -> int:
    """Builds where something changed, copies the site so that its pages work as files, and says where the zip is."""
    order = read_order(options)
    with Progress() as say:
        if not is_fresh(order):
            import_module("generator.pipeline.story").build(order, say)
        say("Packing the files")
        folder = order.into / "disk" / (path_on_host(order).strip("/").rpartition("/")[2] or "site")
        with successor(folder) as new:
            copy_to_disk(order.site, new)
        archive = folder.with_name(f"{folder.name}.zip")
        pack(folder, archive)
    print(f"Unpack it anywhere and open index.html in it: {archive}")
    return 0
