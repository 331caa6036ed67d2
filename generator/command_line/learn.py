"""`learn`: what the records of days teach the next plan."""

from __future__ import annotations

import textwrap
from argparse import Namespace
from collections.abc import Iterator

from generator.command_line.findings import report
from generator.command_line.ordering import read_order
from generator.command_line.table import as_typed
from generator.pipeline.progress import Progress
from generator.pipeline.recording import Gathering, accept, gather, lessons_of
from generator.problems import Place, Problem, did_you_mean, stop_at
from generator.records.days import RecordedDay
from generator.records.learning import Learned
from generator.units import show_both

REFUSED = 1


def run(options: Namespace) -> int:
    """Prints each figure with its evidence, and writes the accepted ones; status 1 where a record was refused."""
    order = read_order(options)
    with Progress() as say:
        say("Reading the records")
        gathering = gather(order, options.files)
        days = list(lessons_of(gathering))
    for day, lessons in days:
        print(f"\n{day.date}")
        for learned in lessons:
            for line in _told(gathering, day, learned):
                print(as_typed(line))
    latest = {learned.lesson: learned for _, lessons in days for learned in lessons if not learned.why}
    stop_at(list(_unknown(options.accept, latest, gathering)))
    for name in options.accept:
        path = accept(order, gathering.book, latest[name])
        print(f"\n{latest[name].input}: {latest[name].written} is now in {path}")
    if gathering.problems:
        report(gathering.problems)
    return REFUSED if gathering.problems or not days else 0


def _told(gathering: Gathering, day: RecordedDay, learned: Learned) -> Iterator[str]:
    """A figure, what it rests on and how far to trust it; or why there is none."""
    workbook, library = gathering.book.workbook, gathering.edition.library
    lesson, item = library.lessons[learned.lesson], workbook.items[learned.input]
    if learned.why == "missing":
        yield f"  {lesson.title}: nothing to learn from; not written down: {', '.join(learned.missing) or 'a number'}"
        return

    def shown(value: float | None, name: str) -> str:
        measure = workbook.items[name].measure
        return "no number" if value is None else show_both(value, measure, gathering.edition.first, workbook.book)

    yield f"  {lesson.title}: {item.quantity.title}"
    evidence = ", ".join(f"{count} of {reading}" for reading, count in learned.evidence)
    if learned.why == "no_fit":
        yield f"    no figure gives the {shown(learned.observed, str(lesson.by))} that were read. Evidence: {evidence}"
        return
    yield f"    planned {shown(learned.planned, learned.input)}, learned {learned.written}. Evidence: {evidence}"
    if lesson.by:
        planned, observed = shown(learned.computed, lesson.by), shown(learned.observed, lesson.by)
        yield f"    the plan computed {planned}, the day had {observed}"
    yield textwrap.fill(lesson.accuracy, 110, initial_indent="    ", subsequent_indent="    ")
    if learned.why == "outside":
        yield f"    NOT PROPOSED: it lies outside the range of {learned.input}. Look at the readings first."
    else:
        yield f"    take it with --accept {learned.lesson}"


def _unknown(wanted: list[str], latest: dict[str, Learned], gathering: Gathering) -> Iterator[Problem]:
    for name in wanted:
        if name not in gathering.edition.library.lessons:
            hint = did_you_mean(name, latest, "`learn` without `--accept` names them")
            yield Problem(Place(f"--accept {name}"), f"there is no lesson `{name}`", hint)
        elif name not in latest:
            yield Problem(Place(f"--accept {name}"), "these records teach nothing for it", "the lines above say why")
