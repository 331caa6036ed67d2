"""A copy of a finished site that opens from a disk or a stick, on a machine that never had a network.

From a disk browsers allow no modules, no worker, no fetching, and the policy would forbid what is left.
"""

from __future__ import annotations

import io
import re
import shutil
import zipfile
from pathlib import Path

from generator.publishing.bundling import bundle
from generator.publishing.keeping import PACK, SWITCHED_OFF, UNPACKING, WORKER
from generator.reading.putting import put

SCRIPT = "phone/whole.js"
NOT_TAKEN = (WORKER, UNPACKING, PACK, SWITCHED_OFF, "manifest.webmanifest", "sitemap.xml", "404.html")
_TAKEN_OUT = re.compile(r'<meta http-equiv="Content-Security-Policy"[^>]*>|<link rel="manifest"[^>]*>')
_FOLDER = re.compile(
    r'(?P<lead>\b(?:href|data-[a-z-]+)=")(?P<path>(?:\.\./?|\./?|[\w.-]+/)(?:[\w.-]+/|\.\./?)*)(?P<rest>[#"])'
)
_PROGRAMS = re.compile(r'<script(?P<lead>[^>]*?) data-programs="(?P<up>[./]*)phone/main\.js"')
_SAME_TIME = (1980, 1, 1, 0, 0, 0)


def copy_to_disk(site: Path, into: Path) -> None:
    """Fills the folder `into` with a copy of `site` whose pages work as files."""
    shutil.copytree(site, into, dirs_exist_ok=True, ignore=shutil.ignore_patterns(*NOT_TAKEN))
    whole = bundle(into / "phone", {"search.json": into / "search.json"})
    for program in (into / "phone").glob("*.js"):
        program.unlink()
    (into / "search.json").unlink()
    (into / SCRIPT).write_text(whole, encoding="utf-8", newline="\n")
    for page in into.rglob("*.html"):
        page.write_text(as_file(page.read_text(encoding="utf-8")), encoding="utf-8", newline="\n")


def as_file(page: str) -> str:
    """A page as it must be to work from a disk: links lead to files, and the one plain script runs it."""
    page = _PROGRAMS.sub(rf'<script src="\g<up>{SCRIPT}" defer></script><script\g<lead>', _TAKEN_OUT.sub("", page))
    return _FOLDER.sub(lambda found: f"{found['lead']}{found['path'].rstrip('/')}/index.html{found['rest']}", page)


def pack(folder: Path, archive: Path) -> None:
    """The folder as a zip: the same files, the same bytes. Until it is whole the one that was there stays."""
    content = io.BytesIO()
    with zipfile.ZipFile(content, "w", zipfile.ZIP_DEFLATED) as packed:
        for file in sorted(path for path in folder.rglob("*") if path.is_file()):
            name = file.relative_to(folder.parent).as_posix()
            packed.writestr(zipfile.ZipInfo(name, _SAME_TIME), file.read_bytes(), zipfile.ZIP_DEFLATED)
    put(archive, content.getvalue())
