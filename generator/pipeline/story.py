"""The whole run: content in, a finished site out."""

from __future__ import annotations

from collections.abc import Sequence

from generator.papers.printing import Printed, printing
from generator.pipeline.checking import Say, read_and_check
from generator.pipeline.freshness import drop_mark, fingerprint, keep_mark
from generator.pipeline.order import CHANGES, SETTINGS, Order
from generator.pipeline.release import read_release
from generator.publishing.engine import run_engine
from generator.publishing.sealing import seal
from generator.publishing.searching import write_titles
from generator.publishing.swapping import refuse_to_delete, successor
from generator.publishing.writing import write_folder
from generator.rendering import Edition, Rendered, render_site
from generator.telling.listing import Listed

PAPERS = "Setting the papers"
"""What is left of it when all pages are written: it goes on meanwhile."""


def build(order: Order, say: Say, *, sealed: bool = True) -> Edition:
    """Builds the site of an order, and gives what it was built from.

    Raises ProblemsFound, and then the site that was there still is.

    Sealed, it has papers, and the worker that keeps it offline; an author's preview goes without, to be always fresh.
    """
    refuse_to_delete([order.site, order.docs])
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


def write_all(edition: Edition, order: Order, say: Say) -> tuple[Rendered, Printed]:
    """The pages, and the papers that other processes set meanwhile."""
    with printing(edition, order.papers) as printed:

        def listed() -> Sequence[Listed]:
            say(PAPERS)
            return printed().listed

        return render_site(edition, listed, order.templates), printed()


def _pages_alone(edition: Edition, order: Order) -> Rendered:
    return render_site(edition, memory=order.templates)
