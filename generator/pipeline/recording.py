"""Records of days: taken in, merged, reported, kept in the season book, and learned from."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from generator.computing import Workbook
from generator.papers.typesetting import typeset
from generator.pipeline.figuring import figure, open_content
from generator.pipeline.order import Order
from generator.problems import Place, Problem, ProblemsFound, stop_at
from generator.reading import Reading, read_library
from generator.reading.files import shown_path
from generator.records.days import RecordBook, RecordedDay
from generator.records.entry import Entry
from generator.records.formulas import link_formulas
from generator.records.learning import Learned, learn
from generator.records.merging import merge
from generator.records.overlay import write_figure
from generator.records.record_file import record_text
from generator.records.report import Report
from generator.records.season import bring_up_to_date, years
from generator.records.table import to_table
from generator.records.taking import Taken, take_file
from generator.telling.edition import Edition
from generator.telling.listing import usual_size
from generator.telling.words import Words

SEASON = "season.sqlite"
SENT = ("*.json", "record-*.txt", "signed-*.txt")
"""Where a phone's share sheet refuses the first, it sends the others."""


@dataclass(frozen=True)
class Gathering:
    """What some files gave together, with everything in them that was refused."""

    edition: Edition
    book: RecordBook
    entries: tuple[Entry, ...]
    clock: int
    """The latest time at which one of the files was written."""
    problems: tuple[Problem, ...]


def gather(order: Order, files: Sequence[Path]) -> Gathering:
    """Reads, checks and merges. Raises ProblemsFound for content; what is wrong with files is told in `problems`."""
    reading, workbook = open_content(order)
    edition = figure(reading, workbook)
    book = record_book(reading, workbook)
    word, problems, lists, clocks = Words(edition), list[Problem](), list[list[Entry]](), [0]
    for path in _each(files, problems):
        try:
            taken = take_file(path, book.ranges)
        except OSError as fault:
            problems.append(Problem(Place(str(path)), (fault.strerror or str(fault)).lower(), "name a record file"))
            continue
        problems += _refusals(path, taken, word)
        lists.append(taken.entries)
        clocks.append(taken.clock)
    word.stop_at_missing()
    return Gathering(edition, book, tuple(merge(*lists)), max(clocks), tuple(problems))


def record_book(reading: Reading, workbook: Workbook) -> RecordBook:
    """The content's formulas about days. Raises ProblemsFound with every one that cannot be used."""
    formulas, flaws = link_formulas(workbook)
    stop_at([Problem(reading.place(flaw.kind, flaw.name, *flaw.path), flaw.fault, flaw.hint) for flaw in flaws])
    return RecordBook(workbook, formulas)


def write_records(gathering: Gathering, out: Path, say: Callable[[str], None]) -> list[Path]:
    """The season book brought up to date, and of each day gathered the merged record, a table and a report.

    Returns the files written. Raises ProblemsFound where a report cannot be set.
    """
    out.mkdir(parents=True, exist_ok=True)
    say("Keeping the season book")
    days = bring_up_to_date(out / SEASON, gathering.book, gathering.entries)
    sums, gathered = years(out / SEASON, gathering.book, days), {entry["run"] for entry in gathering.entries}
    written = [out / SEASON]
    for day in (day for day in days if any(entry["run"] in gathered for entry in day.entries)):
        say(f"Writing the report of {day.date}")
        data = Report(gathering.edition, day, sums).data()
        record, table, paper = (out / f"{day.run}.{ending}" for ending in ("json", "csv", "pdf"))
        record.write_text(record_text(day.entries, gathering.clock), "utf-8", newline="\n")
        table.write_text(to_table(day.entries), "utf-8-sig", newline="")
        paper.write_bytes(_set(gathering.edition, day, data))
        written += [record, table, paper]
    return written


def lessons_of(gathering: Gathering) -> Iterator[tuple[RecordedDay, list[Learned]]]:
    """What each day teaches, the oldest day first."""
    for day in gathering.book.days(gathering.entries):
        yield day, learn(day)


def accept(order: Order, book: RecordBook, learned: Learned) -> Path:
    """Writes a learned figure into the farm's folder. Raises ProblemsFound, and then nothing has changed there."""
    workbook = book.workbook
    settings = workbook.settler.settle(workbook.plan, {})
    stop_at(
        [
            Problem(
                Place(f"--accept {learned.lesson}"),
                f"was learned with `{choice}` at `{option}`, and the plan has `{settings[choice]}`",
                "accept it with a plan that has the same",
            )
            for choice, option in learned.chosen
            if settings[choice] != option
        ]
    )

    def accepted() -> bool:
        fresh = Workbook.of(read_library(order.shared, order.farm), order.memory)
        return fresh.settler.settle(fresh.plan, {})[learned.input] == learned.value

    plan, in_plan = workbook.library.this_farm.plan, settings.origins[learned.input] == "option"
    return write_figure(order.farm, plan, learned.input, learned.written, in_plan, accepted)


def _each(files: Sequence[Path], problems: list[Problem]) -> Iterator[Path]:
    """The files, and those of folders."""
    for path in files:
        if path.is_dir():
            inside = sorted(file for pattern in SENT for file in path.glob(pattern))
            if not inside:
                problems.append(Problem(Place(str(path)), "no record in this folder", "records end in `.json`"))
            yield from inside
        else:
            yield path


def _refusals(path: Path, taken: Taken, word: Words) -> Iterator[Problem]:
    place = Place(shown_path(path))
    for number, fault in taken.faults:
        said = word(f"phone_record_fault_{fault.code}", at=fault.at)
        yield Problem(place, word("record_entry_refused", place=number, fault=said) if number else said)
    untold = taken.refused - sum(number > 0 for number, _ in taken.faults)
    if untold:
        yield Problem(place, word("record_more_refused", count=untold))


def _set(edition: Edition, day: RecordedDay, data: dict[str, object]) -> bytes:
    """The report as PDF; letters that the font does not have are shown as `?` where it cannot be set with them."""
    farm = edition.library.this_farm
    head = {
        "id": day.run,
        "form": "report",
        "code": day.run[11:].upper(),
        "language": edition.language,
        "not_ready": "",
        "foot": farm.name,
    }
    paper = {**head, "paper": usual_size(edition.first), **data}
    try:
        return typeset([paper], str(data["title"]), farm.name)
    except ProblemsFound:
        return typeset([_plain(paper)], str(data["title"]), farm.name)


def _plain(value: dict[str, object]) -> dict[str, object]:
    def plain(part: object) -> object:
        if isinstance(part, str):
            return "".join(letter if _can_be_set(letter) else "?" for letter in part)
        if isinstance(part, list | tuple):
            return [plain(each) for each in part]
        return {key: plain(each) for key, each in part.items()} if isinstance(part, dict) else part

    return {key: plain(each) for key, each in value.items()}


_LATIN = 0x250
_SIGNS = "−–’“”…\u00a0\u202f"


def _can_be_set(letter: str) -> bool:
    return letter in _SIGNS or (letter.isprintable() and ord(letter) < _LATIN)
