"""Makes a built site fit for a phone: trimmed, in one look, with icons, a strict policy, a worker that knows all."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path

from generator.publishing.first_script import put_first_script_in
from generator.publishing.icons import draw_icons
from generator.publishing.keeping import write_worker
from generator.publishing.looks import gather_looks
from generator.publishing.policy import set_policy
from generator.publishing.searching import write_titles
from generator.publishing.trimming import trim


def seal(site: Path, aside: Collection[str] = (), memory: Path | None = None) -> None:
    """Changes the files of `site` in place. Everything the worker keeps must be final before its list is written.

    Files that lie `aside` are on the host only: no phone keeps them. What can be used again is kept in `memory`.
    """
    trim(site)
    gather_looks(site, memory)
    put_first_script_in(site)
    draw_icons(site)
    set_policy(site)
    write_titles(site)
    write_worker(site, aside)
