"""Puts the script that runs before anything is painted into the pages, where no page has to wait for it.

The policy names it by its hash, as the only script inside a page.
"""

from __future__ import annotations

import re
from pathlib import Path

from generator.problems import Place, Problem, ProblemsFound
from generator.publishing.trimming import without_margins

SCRIPT = "phone/first.js"
_TAG = re.compile(rf'<script src="[^"]*{re.escape(SCRIPT)}"(?P<rest>[^>]*)></script>')


def put_first_script_in(site: Path) -> None:
    """Changes the pages of `site` and takes the file away. Raises ProblemsFound where it would end its own element."""
    program = without_margins((site / SCRIPT).read_text(encoding="utf-8")).strip()
    if "</script" in program.lower():
        raise ProblemsFound([Problem(Place(SCRIPT), "holds `</script`, which ends it inside a page", "part the word")])
    for page in sorted(site.rglob("*.html")):
        text = page.read_text(encoding="utf-8")
        page.write_text(
            _TAG.sub(lambda tag: f"<script{tag['rest']}>{program}</script>", text), encoding="utf-8", newline="\n"
        )
    (site / SCRIPT).unlink()
