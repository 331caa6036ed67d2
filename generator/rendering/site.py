"""All pages and phone data of one edition, in the order in which a reader meets them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from generator.rendering.log_content import log_content
from generator.rendering.manifest import manifest
from generator.rendering.pages import pages, papers_page
from generator.rendering.phone_data import phone_data
from generator.rendering.plan_content import plan_content
from generator.rendering.writer import Writer
from generator.teaching.drill_program import drill_program
from generator.teaching.teaching_program import teaching_program
from generator.telling import addresses
from generator.telling.edition import Edition
from generator.telling.listing import Listed
from generator.telling.words import FRAME


@dataclass(frozen=True)
class Rendered:
    """What one edition comes to, before the site engine sees it."""

    files: Mapping[str, str]
    """Markdown pages and phone data, by path below the folder of documents."""
    settings: Mapping[str, object]
    """What the site engine's settings say differently for this edition."""


def render_site(
    edition: Edition, papers: Callable[[], Sequence[Listed]] | None = None, memory: Path | None = None
) -> Rendered:
    """Markdown pages, phone data and the manifest. Raises ProblemsFound where interface words are missing.

    `papers` is called when all that can be written without them is; `memory` is a folder for what the next time needs.
    """
    writer = Writer(edition, memory)
    made = pages(edition)
    files = {page.file: writer.page(page) for page in made}
    files |= phone_data(edition, writer.words) | plan_content(edition, writer.figures, writer.words)
    files |= log_content(edition, writer.words)
    files |= drill_program(edition, writer.figures) | teaching_program(edition, writer.words)
    files |= manifest(edition, writer.words)
    if papers:
        made.append(papers_page(edition, papers()))
        files[made[-1].file] = writer.page(made[-1])
    settings = {
        "site_name": writer.words("site_name"),
        "site_description": writer.words("site_description"),
        "site_url": edition.library.this_farm.site_address,
        "nav": [addresses.file_of(addresses.TODAY)],
        "extra": {"words": writer.words.beginning(FRAME), "first": edition.first},
    }
    writer.words.stop_at_missing()
    return Rendered(files, settings)
