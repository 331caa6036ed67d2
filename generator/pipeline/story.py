"""The whole run: content in, a finished site out."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from generator.papers.printing import Printed, printing
from generator.pipeline.checking import Say, read_and_check
from generator.pipeline.freshness import drop_mark, fingerprint, keep_mark
from generator.pipeline.order import CHANGES, SETTINGS, Order
from generator.pipeline.release import read_release
from generator.problems import Place, Problem, stop_at
from generator.publishing.engine import run_engine
from generator.publishing.sealing import seal
from generator.publishing.searching import write_titles
from generator.publishing.swapping import successor
from generator.publishing.writing import write_folder
from generator.reading.files import shown_path
from generator.rendering import Edition, Rendered, render_site
from generator.telling.listing import Listed

PROGRAMS = "phone"
PAPERS = "Setting the papers"
"""What is left of it when all pages are written: it goes on meanwhile."""


def build(order: Order, say: Say, *, sealed: bool = True) -> Edition:
    """Builds the site of an order, and gives what it was built from.

    Raises ProblemsFound, and then the site that was there still is.

    Sealed, it has papers, and the worker that keeps it offline; an author's preview goes without, to be always fresh.
    """
    stop_at([_not_ours(folder) for folder in (order.site, order.docs) if _is_not_ours(folder)])
    made_from = fingerprint(order.inputs)
    edition = read_and_check(order, say)
    say("Writing the pages")
    rendered, papers = write_all(edition, order, say) if sealed else (_pages_alone(edition, order), Printed({}, []))
    write_folder(order.docs, {**rendered.files, **papers.files})
    with successor(order.site) as site:
        say("Making the site")
        run_engine(SETTINGS, order.docs, site, rendered.settings, read_release(CHANGES).day, order.templates)
        if sealed:
            say("Sealing the site")
            seal(site, papers.aside(edition), order.looks)
        else:
            write_titles(site)
        drop_mark(order)  # a cut between the swap and the mark must not leave the old mark beside a new site
    keep_mark(order, made_from, edition.library.this_farm.site_address)
    return edition


def _is_not_ours(folder: Path) -> bool:
    """Whether a folder that a build replaces holds what no build made: each has the programs in it."""
    return folder.is_dir() and any(folder.iterdir()) and not (folder / PROGRAMS).is_dir()


def _not_ours(folder: Path) -> Problem:
    hint = "name another folder with `--into`, or move away what is in this one"
    return Problem(Place(shown_path(folder)), "holds what no build made, and a build would delete it", hint)


def write_all(edition: Edition, order: Order, say: Say) -> tuple[Rendered, Printed]:
    """The pages, and the papers that other processes set meanwhile."""
    with printing(edition, order.papers) as printed:

        def listed() -> Sequence[Listed]:
            say(PAPERS)
            return printed().listed

        return render_site(edition, listed, order.templates), printed()


def _pages_alone(edition: Edition, order: Order) -> Rendered:
    return render_site(edition, memory=order.templates)
