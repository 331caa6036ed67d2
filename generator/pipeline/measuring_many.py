"""How a build grows with the number of procedures and of farms. Both should be straight lines."""

from __future__ import annotations

import re
import shutil
import time
from dataclasses import replace
from pathlib import Path

from generator.pipeline.farms import build_farms, orders_of
from generator.pipeline.figuring import figure, open_content
from generator.pipeline.order import CHANGES, SETTINGS, Order
from generator.pipeline.release import read_release
from generator.publishing.engine import run_engine
from generator.publishing.writing import write_folder
from generator.rendering import render_site

FEW, MANY = 250, 1000
SOME_FARMS, MORE_FARMS = 2, 6
_ENTRY = re.compile(r"^(?P<id>[a-z][a-z0-9_]*):", re.MULTILINE)
_ORDER = re.compile(r"^  order: (?P<order>\d+)", re.MULTILINE)
_APART = 10_000


def measure_many(order: Order, folder: Path) -> dict[str, float]:
    """Seconds and bytes for each procedure of few and many, and seconds for each farm of some and more."""
    few, many = (_pages_of(order, number, folder / str(number)) for number in (FEW, MANY))
    some, more = (_farms_of(order, number, folder / f"farms_{number}") for number in (SOME_FARMS, MORE_FARMS))
    return {
        f"{MANY} procedures, s": round(many[0], 1),
        f"{MANY} procedures, MB": round(many[1] / 1e6, 1),
        f"Time of a procedure, {MANY} to {FEW}": round(many[0] / MANY / (few[0] / FEW), 2),
        f"Size of a procedure, {MANY} to {FEW}": round(many[1] / MANY / (few[1] / FEW), 2),
        f"One of {MORE_FARMS} farms, s": round(more, 1),
        f"Time of a farm, {MORE_FARMS} to {SOME_FARMS}": round(more / some, 2),
    }


def _pages_of(order: Order, number: int, folder: Path) -> tuple[float, int]:
    """Seconds to read, compute and make the pages with so many procedures, and their bytes; without papers."""
    content = Path(shutil.copytree(order.content, folder / "content"))
    files = [file.read_text(encoding="utf-8") for file in sorted((content / "shared" / "procedures").rglob("*.yml"))]
    there, copy = sum(len(_ENTRY.findall(text)) for text in files), 0
    while there < number:
        copy += 1
        for place, text in enumerate(files):
            made, of_file = _copied(text, copy), len(_ENTRY.findall(text))
            if there < number:
                (content / "shared" / "procedures" / f"copy_{copy}_{place}.yml").write_text(made, encoding="utf-8")
                there += of_file
    larger = replace(order, content=content, into=folder / "build")
    start = time.perf_counter()
    edition = figure(*open_content(larger))
    rendered = render_site(edition)
    write_folder(larger.docs, rendered.files)
    run_engine(SETTINGS, larger.docs, larger.site, rendered.settings, read_release(CHANGES).day)
    took = time.perf_counter() - start
    return took, sum(page.stat().st_size for page in larger.site.rglob("*.html"))


def _copied(text: str, copy: int) -> str:
    """The procedures of a file once more, under other names and behind the others."""
    text = _ENTRY.sub(rf"\g<id>_{copy}:", text)
    return _ORDER.sub(lambda found: f"  order: {int(found['order']) + copy * _APART}", text)


def _farms_of(order: Order, number: int, folder: Path) -> float:
    """Seconds for each of so many farms, all built from nothing."""
    farms = [Path(shutil.copytree(order.farm, folder / f"farm_{place}")) for place in range(number)]
    start = time.perf_counter()
    for built in build_farms(orders_of(farms, order.content, folder / "build")):
        assert not built.problems, built.problems
    return (time.perf_counter() - start) / number
