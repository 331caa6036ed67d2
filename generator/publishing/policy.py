"""The content security policy: nothing from elsewhere, no script and no style that is not in the list."""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Iterable
from pathlib import Path

from generator.problems import Place, Problem, ProblemsFound

_CHARSET = '<meta charset="utf-8">'
_INLINE = re.compile(r"<script(?![^>]*\bsrc=)(?![^>]*\btype=\"application/json\")[^>]*>(.*?)</script>", re.DOTALL)
_STYLE = re.compile(r"<style[^>]*>(.*?)</style>", re.DOTALL)


def set_policy(site: Path) -> None:
    """Puts one policy into every page. Raises ProblemsFound for a page without a head.

    It names the inline scripts and styles of all pages together: the first page's policy stays in force while one
    page is turned into the next.
    """
    texts = {page: page.read_text(encoding="utf-8") for page in sorted(site.rglob("*.html"))}
    line = f'<meta http-equiv="Content-Security-Policy" content="{policy(texts.values())}">'
    headless = [page for page, text in texts.items() if _CHARSET not in text]
    if headless:
        fault = "the page has no character set to put the policy after"
        raise ProblemsFound(Problem(Place(page.relative_to(site).as_posix()), fault) for page in headless)
    for page, text in texts.items():
        page.write_text(text.replace(_CHARSET, f"{_CHARSET}{line}", 1), encoding="utf-8", newline="\n")


def policy(texts: Iterable[str]) -> str:
    """The policy for these pages."""
    read = list(texts)
    allowed = {
        "default-src": "'none'",
        "script-src": _allowed(_INLINE, read),
        "style-src": _allowed(_STYLE, read),
        "img-src": "'self' data:",
        "font-src": "'self'",
        "connect-src": "'self'",
        "worker-src": "'self'",
        "manifest-src": "'self'",
        "base-uri": "'none'",
        "form-action": "'none'",
    }
    return "; ".join(f"{kind} {places}" for kind, places in allowed.items())


def _allowed(inline: re.Pattern[str], pages: Iterable[str]) -> str:
    return " ".join(["'self'", *sorted({_hash(text) for page in pages for text in inline.findall(page)})])


def _hash(text: str) -> str:
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"
