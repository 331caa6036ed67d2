"""What a day teaches the next plan: new figures for inputs, each with the evidence for it."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal

from generator.formula import names
from generator.model.record import Lesson
from generator.records.days import RecordBook, RecordedDay
from generator.records.formulas import missing, work_out

_STEPS = 16
_BISECTIONS = 40
_FIGURES = 3


@dataclass(frozen=True)
class Learned:
    """A figure proposed for an input, in SI; `value` is None where none could be found, and `why` says so."""

    lesson: str
    run: str
    input: str
    planned: float
    value: float | None
    written: str
    """As a plan or an overlay would write it."""
    observed: float | None
    computed: float | None
    """What the plan had computed for what was observed, where the lesson goes by another quantity."""
    evidence: tuple[tuple[str, int], ...]
    """Readings and how many entries of each."""
    why: str = ""
    """`missing`, `outside` (the figure would lie outside the input's range) or `no_fit`."""
    missing: tuple[str, ...] = ()
    chosen: tuple[tuple[str, str], ...] = ()
    """Choices that can bring the input, with the options of the day: the figure holds for those."""


def learn(day: RecordedDay) -> list[Learned]:
    """What each lesson makes of the day."""
    return [_learn(day, name, lesson) for name, lesson in day.book.workbook.library.lessons.items()]


def _learn(day: RecordedDay, name: str, lesson: Lesson) -> Learned:
    formulas, workbook = day.book.formulas, day.book.workbook
    tree, planned = formulas.lessons[name], float(day.settings[lesson.input])
    lacking = tuple(missing(tree, day.known))
    observed = work_out(workbook, tree, day.known)
    value, computed, why = observed, None, "missing" if observed is None else ""
    if observed is not None and lesson.by:
        settings = {**day.settings, **_given(day, name)}
        value = solve(day.book, settings, lesson, observed)
        computed = _compute(day.book, settings, lesson.by)
        why = "" if value is not None else "no_fit"
    written = ""
    if value is not None:
        value, written = as_written(day.book, lesson.input, value)
        if workbook.givens.inputs[lesson.input].refuses(value):
            why = "outside"
    evidence = tuple(_evidence(day, name).items())
    chosen = tuple(
        (choice, str(day.settings[choice]))
        for choice in workbook.givens.choices
        if lesson.input in workbook.givens.brings(choice)
    )
    found = (planned, value, written, observed, computed)
    return Learned(name, day.run, lesson.input, *found, evidence, why, lacking, chosen)


def _given(day: RecordedDay, name: str) -> dict[str, float]:
    """Inputs that were read on the day; what was not read stays as planned."""
    inputs, workbook = day.book.workbook.givens.inputs, day.book.workbook
    found = {key: work_out(workbook, tree, day.known) for key, tree in day.book.formulas.given[name].items()}
    return {key: value for key, value in found.items() if value is not None and not inputs[key].refuses(value)}


def solve(book: RecordBook, settings: Mapping[str, float | str], lesson: Lesson, observed: float) -> float | None:
    """The input at which the plan computes what was observed; of several, the nearest to the planned one."""
    entry, planned = book.workbook.givens.inputs[lesson.input], float(settings[lesson.input])

    def apart(value: float) -> float | None:
        computed = _compute(book, {**settings, lesson.input: value}, str(lesson.by))
        return None if computed is None else computed - observed

    places = sorted({planned, *(entry.low + (entry.high - entry.low) * step / _STEPS for step in range(_STEPS + 1))})
    gaps = [(place, gap) for place in places if (gap := apart(place)) is not None]
    found = [place for place, gap in gaps if gap == 0] + [
        _bisect(apart, low, high) for (low, below), (high, above) in itertools.pairwise(gaps) if below * above < 0
    ]
    return min(found, key=lambda value: abs(value - planned)) if found else None


def _bisect(apart: Callable[[float], float | None], low: float, high: float) -> float:
    rising = (apart(low) or 0) < 0
    for _ in range(_BISECTIONS):
        middle = (low + high) / 2
        gap = apart(middle)
        if gap is None:
            break
        low, high = (middle, high) if (gap < 0) == rising else (low, middle)
    return (low + high) / 2


def _compute(book: RecordBook, settings: Mapping[str, float | str], wanted: str) -> float | None:
    value = book.workbook.compute(settings, book.workbook.rests_on(wanted)).values.get(wanted)
    return value if isinstance(value, int | float) else None


def _evidence(day: RecordedDay, name: str) -> dict[str, int]:
    trees = [day.book.formulas.lessons[name], *day.book.formulas.given[name].values()]
    used = {name for tree in trees for name in names(tree)}
    return {
        reading: len(found)
        for reading, found in day.figures.entries.items()
        if found and any(each.startswith(f"{reading}_") for each in used)
    }


def as_written(book: RecordBook, name: str, value: float) -> tuple[float, str]:
    """A value rounded to what the evidence bears, in SI and as content writes it, in the farm's first units."""
    item, workbook = book.workbook.items[name], book.workbook
    shown = getattr(item.measure, workbook.library.this_farm.first_units)
    unit = "s" if item.measure.form == "duration" else shown.unit
    number = Decimal(f"{workbook.book.from_si(value, unit):.{_FIGURES}g}")
    whole = workbook.givens.inputs[name].whole
    text = f"{number:f}" if not whole else str(round(number))
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    written = text if unit == "1" else f"{text} {unit}"
    return workbook.book.read(written, item.measure), written
