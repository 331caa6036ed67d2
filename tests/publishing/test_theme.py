"""Notices when the theme changes what ours replaces: then `site_overrides` must be read beside it again."""

from __future__ import annotations

import hashlib
from pathlib import Path

import material
import pytest

TEMPLATES = Path(material.__file__).parent / "templates"
REPLACED = {
    "base.html": "a919e32d2225e09e",
    "partials/header.html": "8cf3fb15bcf969ff",
    "partials/footer.html": "50c2a75f013b7b03",
    "partials/palette.html": "fb935107ae7d3d74",
    "partials/javascripts/base.html": "d6113712bc4deb30",
    "partials/javascripts/content.html": "3722e156f0f6339d",
    "partials/javascripts/palette.html": "8790389765ea6036",
}
"""The first digits of the hash of each, as of the version whose text ours was written from."""


@pytest.mark.parametrize(("name", "digits"), REPLACED.items())
def test_what_ours_replaces_is_as_it_was(name: str, digits: str) -> None:
    assert hashlib.sha256((TEMPLATES / name).read_bytes()).hexdigest()[:16] == digits
