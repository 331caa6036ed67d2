"""What a phone reads when it puts the site on its home screen."""

from __future__ import annotations

import json
from urllib.parse import urlsplit

from generator.telling.edition import Edition
from generator.telling.words import Words

FILE = "manifest.webmanifest"
_COLOUR = "#0b2a33"


def manifest(edition: Edition, words: Words) -> dict[str, str]:
    """The manifest by its path. Its id is the path of the site: `./` would collide with other sites of a host."""
    content = {
        "id": urlsplit(edition.library.this_farm.site_address).path,
        "name": words("site_name"),
        "short_name": words("site_short_name"),
        "description": words("site_description"),
        "lang": edition.language,
        "start_url": "./",
        "scope": "./",
        "display": "standalone",
        "background_color": _COLOUR,
        "theme_color": _COLOUR,
        "icons": [
            *(_icon(f"icons/{size}.png", size, "any") for size in (192, 512)),
            _icon("icons/maskable.png", 512, "maskable"),
        ],
    }
    return {FILE: json.dumps(content, ensure_ascii=False, indent=1) + "\n"}


def _icon(path: str, size: int, purpose: str) -> dict[str, str]:
    return {"src": path, "sizes": f"{size}x{size}", "type": "image/png", "purpose": purpose}
