"""Takes out what no phone needs: four fifths of what the theme brings along."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

NOT_NEEDED = (
    "assets/javascripts/lunr",
    "assets/javascripts/workers",
    "assets/images",
    "sitemap.xml.gz",
)
"""The theme's search (ours reads the index itself) with its languages, its favicon, a second site map."""
_MAP = re.compile(rb"\s*(?://|/\*)# sourceMappingURL=[^\s*]+(?:\s*\*/)?\s*$")


def trim(site: Path) -> None:
    """Removes source maps, the mentions of them, and files that no page asks for."""
    for name in NOT_NEEDED:
        path = site / name
        if path.is_dir():
            shutil.rmtree(path)
        else:
            path.unlink(missing_ok=True)
    for path in site.rglob("*.map"):
        path.unlink()
    for path in (*site.rglob("*.js"), *site.rglob("*.css")):
        content = path.read_bytes()
        shorter = _MAP.sub(b"", content)
        if shorter != content:
            path.write_bytes(shorter)
