"""Where each thing stands on the site, and how one page refers to another."""

from __future__ import annotations

import posixpath

TODAY = ""
PLAN = "plan/"
MENU = "menu/"
BRING = "bring/"
SHOP = "shop/"
CREW = "crew/"
VIEWS = "day/"
QUESTIONS = "questions/"
PASS_ON = "pass/"
SHEET = "sheet/"
LOG = "log/"
RECORD = "record/"
PAPERS = "papers/"
AT_HAND = "help/"
FAULTS = "faults/"
LEARN = "learn/"
DRILLS = "drills/"
SIGNING = "signing/"
CAUTIONS = "cautions/"
NUMBERS = "numbers/"
METHODS = "numbers/methods/"
SOURCES = "sources/"
COVERAGE = "coverage/"
GLOSSARY = "glossary/"
ABOUT = "about/"

WITH_PROSE = frozenset({PLAN, AT_HAND, CAUTIONS, ABOUT})
"""Pages at whose top prose of their name is shown."""
_FOLDERS = frozenset({"assets/", "choices/", "icons/", "look/", "phone/", "work/"})
_NAMED = {each for name, each in [*globals().items()] if name.isupper() and isinstance(each, str)}
TAKEN = _FOLDERS | _NAMED - WITH_PROSE
"""Where no page of prose can stand: the pages named above are there, and folders of the site."""


def procedure(identifier: str) -> str:
    """The page of a procedure."""
    return f"work/{identifier}/"


def path(identifier: str) -> str:
    """The page of a way in."""
    return f"{LEARN}{identifier}/"


def group(identifier: str) -> str:
    """The page of the numbers of a group."""
    return f"{NUMBERS}{identifier}/"


def choice(identifier: str) -> str:
    """The page that lays out a choice's options."""
    return f"choices/{identifier}/"


def prose(identifier: str) -> str:
    """A page of prose."""
    return f"{identifier}/"


def file_of(address: str) -> str:
    """The Markdown file from which the page at an address is made."""
    return f"{address}index.md" if address in {TODAY, NUMBERS, LEARN} else f"{address.rstrip('/')}.md"


def to_file(here: str, file: str) -> str:
    """The relative address of a file of the site, such as a PDF, as written on the page at `here`."""
    return posixpath.relpath(f"/{file}", f"/{here}")


def between(here: str, there: str) -> str:
    """The relative address of `there` (with or without `#part`) as written on the page at `here`."""
    path, _, part = there.partition("#")
    way = "" if path == here and part else posixpath.relpath(f"/{path}", f"/{here}") + "/"
    return way + (f"#{part}" if part else "")
