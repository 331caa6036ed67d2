"""Holds a published site against the folder it was published from."""

from __future__ import annotations

import json
import re
from concurrent.futures import ThreadPoolExecutor
from http.client import HTTPException
from pathlib import Path
from urllib.error import HTTPError
from urllib.parse import quote, urlsplit
from urllib.request import Request, urlopen

from generator.problems import Place, Problem, ProblemsFound, stop_at

AT_ONCE = 4
PATIENCE = 20
"""Seconds to wait for one file."""
MANIFEST = "manifest.webmanifest"
_PRINTED = r"[!-~]+"
"""All that may stand in an address: what ASCII prints, blanks apart (RFC 3986, section 2)."""
_KINDS = {".js": "javascript", ".html": "text/html", ".webmanifest": "json", ".css": "text/css", ".pdf": "pdf"}
"""What the kind of file that a host declares must contain, or browsers refuse it."""


def compare_with_host(site: Path, address: str) -> int:
    """Fetches every file of `site` from `address`; returns how many. Raises ProblemsFound with each that differs."""
    files = sorted(path for path in site.rglob("*") if path.is_file())
    if not files:
        raise ProblemsFound([Problem(Place(str(site)), "holds no site", "run `build` first")])
    stop_at(_about_address(address))
    base = address.rstrip("/") + "/"
    stop_at(_about_reach(base))
    with ThreadPoolExecutor(AT_ONCE) as several:
        answers = several.map(lambda path: _compare(path, base + quote(_asked_for(path, site))), files)
        stop_at([problem for problem in answers if problem])
    stop_at(_about_place(site, base))
    return len(files)


def _about_place(site: Path, base: str) -> list[Problem]:
    """Elsewhere than at its own address a phone takes the site for another one, and the codes of cards lead nowhere."""
    manifest = site / MANIFEST
    own = json.loads(manifest.read_text(encoding="utf-8")).get("id", "") if manifest.is_file() else None
    if own is None or own == urlsplit(base).path:
        return []
    hint = "write the address into the farm's `site_address`, and build and publish again"
    return [Problem(Place(base), f"the site was built to stand at `{own}`", hint)]


def _about_reach(base: str) -> list[Problem]:
    """Where nobody answers, one line says so in place of one for each file."""
    try:
        urlopen(base, timeout=PATIENCE).close()
    except OSError as fault:
        return [] if isinstance(fault, HTTPError) else [_unreachable(base, fault)]
    except (HTTPException, ValueError):
        pass  # told file by file
    return []


def _unreachable(address: str, fault: OSError) -> Problem:
    return Problem(Place(address), f"cannot be reached: {getattr(fault, 'reason', fault)}", "look at the address")


def _about_address(address: str) -> list[Problem]:
    if not _is_address(address):
        hint = "write it in full and as a browser copies it: `https://…/`, without blanks and accents"
        return [Problem(Place(address), "is not the address of a site", hint)]
    parts = urlsplit(address)
    if parts.scheme == "http" and parts.hostname not in ("localhost", "127.0.0.1"):
        return [Problem(Place(address), "without https no phone keeps the site offline", "publish it over https")]
    return []


def _is_address(address: str) -> bool:
    try:
        parts = urlsplit(address)
        whole = parts.scheme in ("http", "https") and bool(parts.hostname) and parts.port != 0
    except ValueError:
        return False
    return whole and re.fullmatch(_PRINTED, address) is not None


def _asked_for(path: Path, site: Path) -> str:
    """Phones ask for a page by its folder, which not every host answers."""
    return path.relative_to(site).as_posix().removesuffix("index.html")


def _compare(path: Path, address: str) -> Problem | None:
    request = Request(address, headers={"Cache-Control": "no-cache", "Accept-Encoding": "identity"})
    try:
        with urlopen(request, timeout=PATIENCE) as answer:
            content, declared, came_from = answer.read(), answer.headers.get("Content-Type", ""), answer.geturl()
    except HTTPError as fault:
        return Problem(Place(address), f"answers {fault.code}", "publish all files of the folder, hidden ones too")
    except OSError as fault:
        return _unreachable(address, fault)
    except (HTTPException, ValueError) as fault:  # cut short, or sent on to what is no address
        hint = "run this again; where it stays so, ask those who run the host"
        return Problem(Place(address), f"answers what cannot be read: {fault}", hint)
    if came_from != address:
        hint = "have the host answer at this very address: phones keep nothing that comes from another"
        return Problem(Place(address), f"sends on to {came_from}", hint)
    if content != path.read_bytes():
        return Problem(Place(address), "differs from what was built", "publish the whole folder again")
    wanted = _KINDS.get(path.suffix, "")
    if wanted not in declared:
        return Problem(Place(address), f"is declared as `{declared}`", f"have the host declare it as {wanted}")
    return None
