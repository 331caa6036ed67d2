"""How long a build takes and what its site weighs."""

from __future__ import annotations

import gzip
import sys
import time
from pathlib import Path

from generator.pipeline.order import Order
from generator.pipeline.story import build
from generator.publishing import searching
from generator.publishing.first_copy import packs_well
from generator.publishing.keeping import PACK, file_at, listed_files
from generator.publishing.loaded import loaded_by_all

Figures = dict[str, float]


def measure_build(order: Order) -> Figures:
    """Seconds of each step and of all, memory in MB, and weights in kB as a host sends them compressed."""
    figures: Figures = {}
    begun: list[tuple[str, float]] = []

    def next_step(step: str) -> None:
        now = time.perf_counter()
        if begun:
            name, start = begun.pop()
            figures[f"{name}, s"] = round(now - start, 2)
        begun.append((step, now))

    start = time.perf_counter()
    build(order, next_step)
    next_step("")
    figures["The whole build, s"] = round(time.perf_counter() - start, 2)
    return figures | _memory() | _weights(order.site)


def _weights(site: Path) -> Figures:
    sent = {name: _compressed(file_at(site, name)) for name in listed_files(site) if name != searching.FILE}
    pages = {name: weight for name, weight in sent.items() if file_at(site, name).name == "index.html"}
    printed = sum(weight for name, weight in sent.items() if name.endswith(".pdf"))
    alone = sum(weight for name, weight in sent.items() if not packs_well(file_at(site, name)))
    copy = alone + (site / PACK).stat().st_size
    loaded = sum(sent[name] for name in loaded_by_all(site))
    return {
        "Pages": len(pages),
        "Files kept offline": len(listed_files(site)),
        "A first copy with papers, kB": _kilobytes(copy),
        "A first copy without papers, kB": _kilobytes(copy - printed),
        "What every page has loaded by then, kB": _kilobytes(loaded),
        "All without papers, file by file, kB": _kilobytes(sum(sent.values()) - printed),
        "Papers kept offline, kB": _kilobytes(printed),
        "The front page alone, kB": _kilobytes(pages[""]),
        "The heaviest page alone, kB": _kilobytes(max(pages.values())),
        "All pages together, kB": _kilobytes(sum(pages.values())),
        "Phone programs, kB": _kilobytes(sum(weight for name, weight in sent.items() if name.startswith("phone/"))),
    }


def _compressed(file: Path) -> int:
    """As hosts do it: what is compressed already goes as it is."""
    content = file.read_bytes()
    return len(gzip.compress(content, 6, mtime=0)) if packs_well(file) else len(content)


def _kilobytes(number: int) -> float:
    return round(number / 1000, 1)


def _memory() -> Figures:
    if sys.platform == "win32":
        return {}
    import resource

    unit = 1_000_000 if sys.platform == "darwin" else 1000
    own, others = (resource.getrusage(whose).ru_maxrss for whose in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
    return {"Most memory, MB": round(own / unit), "Most memory of a process that sets papers, MB": round(others / unit)}
