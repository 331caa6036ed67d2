"""Prints the papers of an edition."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from generator.papers.binding import count_pages
from generator.papers.catalogue import sheets
from generator.papers.jobs import Job, PackJob, QuireJob
from generator.papers.making import jobs_begun, run_jobs
from generator.papers.paper import Sheet, set_up
from generator.papers.typesetting import letters_of
from generator.papers.wording import Wording
from generator.problems import Place, Problem, as_shown, did_you_mean, stop_at
from generator.telling.edition import Edition
from generator.telling.listing import SIZES, Listed, packs, usual_size

TOGETHER = 3
"""So many papers are set at once: each more takes some 20 MB of memory, and a change to one sets all of them anew."""


@dataclass(frozen=True)
class Printed:
    """All papers of an edition."""

    files: Mapping[str, bytes]
    """By path below the site."""
    listed: Sequence[Listed]

    def aside(self, edition: Edition) -> set[str]:
        """What a phone does without, pictures too: every paper is in the pack of the usual size, and that it keeps."""
        kept = packs(edition.language)[usual_size(edition.first)]
        return {file for file in self.files if file != kept}


@contextmanager
def printing(edition: Edition, memory: Path) -> Iterator[Callable[[], Printed]]:
    """Begins every paper in every size, the packs, and a picture of each. What it gives waits until all are there.

    `memory` is a folder that keeps what was set before. Raises ProblemsFound with every text that does not fit, when
    waited for.
    """
    say = Wording(edition)
    found = sheets(say)
    quires = _quires(found, say)
    with jobs_begun([job for jobs in quires.values() for job in jobs], memory) as finish:

        @cache
        def printed() -> Printed:
            files = finish()
            bound = {pack: tuple(files.pop(job.file) for job in jobs) for pack, jobs in quires.items()}
            files |= run_jobs([PackJob(pack, parts, _title(say)) for pack, parts in bound.items()], memory)
            return Printed(files, _listed(found, files, edition.language))

        yield printed


def print_some(edition: Edition, stations: Sequence[str], size: str, memory: Path) -> dict[str, bytes]:
    """The papers of stations or of those ids, or all where none is named, each by the name of its file.

    A sheet of label stock comes in its own size. Raises ProblemsFound for unknown stations, and as `printing` does.
    """
    say = Wording(edition)
    found = sheets(say)
    names = [sheet.id.removeprefix("station_") for sheet in found]
    stop_at([_no_paper(wanted, names) for wanted in stations if wanted.removeprefix("station_") not in names])
    wanted = {station.removeprefix("station_") for station in stations} or set(names)
    chosen = [sheet for sheet, name in zip(found, names, strict=True) if name in wanted]
    author = edition.library.this_farm.name
    return run_jobs(
        [Job(f"{sheet.id}.pdf", set_up(sheet, say, sheet.bound_to or size), sheet.title, author) for sheet in chosen],
        memory,
    )


def _no_paper(wanted: str, names: Sequence[str]) -> Problem:
    hint = did_you_mean(wanted, names, f"for example {names[0]} or {names[-1]}")
    return Problem(Place("--station"), f"no paper {as_shown(wanted)}", hint)


def _quires(found: list[Sheet], say: Wording) -> dict[str, list[QuireJob]]:
    """What is set together for the pack of each size. A picture is made with the first size its paper comes in."""
    language, author = say.edition.language, say.edition.library.this_farm.name
    quires: dict[str, list[QuireJob]] = {}
    for size, pack in packs(language).items():
        fitting = [(sheet, set_up(sheet, say, size)) for sheet in found if size in sheet.sizes()]
        letters = letters_of([data for _, data in fitting])
        quires[pack] = [
            QuireJob(
                f"{pack}.{start}",
                tuple(data for _, data in some),
                tuple(_file(sheet, language, size) for sheet, _ in some),
                tuple(_picture(sheet, language) if size == sheet.sizes()[0] else "" for sheet, _ in some),
                letters,
                _title(say),
                author,
            )
            for start in range(0, len(fitting), TOGETHER)
            for some in [fitting[start : start + TOGETHER]]
        ]
    return quires


def _title(say: Wording) -> str:
    return f"{say.word('paper_pack')}, {say.edition.library.this_farm.name}"


def _file(sheet: Sheet, language: str, size: str) -> str:
    return f"papers/{language}/{size}/{sheet.id}.pdf"


def _picture(sheet: Sheet, language: str) -> str:
    return f"papers/{language}/{sheet.id}.png"


def _listed(found: list[Sheet], files: Mapping[str, bytes], language: str) -> list[Listed]:
    """The list, with the page of the pack on which each begins: always the front of a leaf."""
    begins: dict[str, dict[str, int]] = {sheet.id: {} for sheet in found}
    for size in SIZES:
        page = 1
        for sheet in (sheet for sheet in found if size in sheet.sizes()):
            begins[sheet.id][size] = page
            pages = count_pages(files[_file(sheet, language, size)])
            page += pages + pages % 2
    return [
        Listed(
            sheet.id,
            sheet.title,
            sheet.group,
            sheet.code,
            {size: _file(sheet, language, size) for size in sheet.sizes()},
            _picture(sheet, language),
            begins[sheet.id],
        )
        for sheet in found
    ]
