"""What every page loads before all else: the look, and `main.js` with all that it imports, and so on."""

from __future__ import annotations

import re
from pathlib import Path

from generator.publishing.looks import SHEET

MAIN = "phone/main.js"
_IMPORT = re.compile(r'^(?:import|export) \{[^}]*\} from "\./(?P<module>\w+\.js)";', re.MULTILINE)


def loaded_by_all(site: Path) -> list[str]:
    """The addresses, sorted. A browser has them when it begins to keep a copy, so they need not come again."""
    found: set[str] = set()
    waiting = [MAIN]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            program = (site / name).read_text(encoding="utf-8")
            waiting += [f"phone/{each['module']}" for each in _IMPORT.finditer(program)]
    return sorted({SHEET, *found})
