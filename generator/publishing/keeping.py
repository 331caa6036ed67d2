"""The list of files a phone keeps, written into the worker: a browser compares nothing but the worker's bytes."""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Collection
from pathlib import Path

from generator.publishing import searching
from generator.publishing.digest import digest
from generator.publishing.first_copy import packs_well, write_pack
from generator.publishing.loaded import loaded_by_all

WORKER = "worker.js"
UNPACKING = "unpacking.js"
"""A part of the worker."""
PACK = "kept.lzma"
SWITCHED_OFF = "worker_off.js"
"""A worker that removes itself and all it kept. Served in place of the other, it frees every phone of a bad version."""
LARGE_ICONS = tuple(f"icons/{name}.png" for name in (180, 192, 512, "maskable"))
LICENCES = ("look/workings.OFL.txt",)
NOT_KEPT = (WORKER, UNPACKING, PACK, SWITCHED_OFF, *LARGE_ICONS, *LICENCES, "robots.txt", "sitemap.xml")
"""Large icons are for the system, which fetches them when it installs; the others are never asked for by a page.

The font names its owner and its licence in itself too.
"""
_LIST = "/* the list of files */"
_LISTED = re.compile(r"^const files = (\{.*\});$", re.MULTILINE)


def write_worker(site: Path, aside: Collection[str] = ()) -> None:
    """Fills the worker's list and its version, a hash of the list, and packs what it neither has nor makes itself."""
    template = (site / WORKER).read_text(encoding="utf-8")
    files = kept_files(site, aside)
    version = hashlib.sha256(json.dumps(files, sort_keys=True).encode()).hexdigest()[:16]
    found = {address: file_at(site, address) for address in files}
    loaded = loaded_by_all(site)
    sent = {address: file for address, file in found.items() if address not in (searching.FILE, *loaded)}
    pack = {"path": PACK, "digest": write_pack(site / PACK, sent), "size": (site / PACK).stat().st_size}
    apart = {address: file.stat().st_size for address, file in sent.items() if not packs_well(file)}
    lines = [
        f'const version = "{version}";',
        f"const files = {json.dumps(files, separators=(',', ':'), sort_keys=True)};",
        f"const pack = {json.dumps({**pack, 'apart': apart, 'loaded': loaded})};",
        f'const titles = "{searching.FILE}";',
    ]
    (site / WORKER).write_text(template.replace(_LIST, "\n".join(lines)), encoding="utf-8", newline="\n")


def kept_files(site: Path, aside: Collection[str] = ()) -> dict[str, str]:
    """Every file but those `aside`, by its address as a page asks for it, with its digest."""
    found = {}
    for path in sorted(path for path in site.rglob("*") if path.is_file()):
        name = path.relative_to(site).as_posix()
        if name not in NOT_KEPT and name not in aside:
            found[re.sub(r"(^|/)index\.html$", r"\1", name)] = digest(path.read_bytes())
    return found


def file_at(site: Path, address: str) -> Path:
    """The file that answers at an address."""
    return site / f"{address}index.html" if address.endswith("/") or not address else site / address


def listed_files(site: Path) -> list[str]:
    """The addresses of the files that the worker of a sealed site keeps."""
    worker = (site / WORKER).read_text(encoding="utf-8")
    found = _LISTED.search(worker)
    return list(json.loads(found[1])) if found else []
