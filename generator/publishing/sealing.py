"""Makes a built site fit for a phone: trimmed, with icons, a strict policy, and a worker that knows every file."""

from __future__ import annotations

from pathlib import Path

from generator.publishing.icons import draw_icons
from generator.publishing.keeping import write_worker
from generator.publishing.policy import set_policy
from generator.publishing.trimming import trim


def seal(site: Path) -> None:
    """Changes the files of `site` in place. Everything the worker keeps must be final before its list is written."""
    trim(site)
    draw_icons(site)
    set_policy(site)
    write_worker(site)
