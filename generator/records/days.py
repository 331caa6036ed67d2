"""The days in a merged record, each with its plan, its figures and what it came to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from generator.computing import Workbook
from generator.records.entry import Entry, in_order, standing
from generator.records.figures import Figures, figures_of
from generator.records.formulas import RecordFormulas, work_out
from generator.records.judging import verdict_of

Values = Mapping[str, float | str]
TRAINING = "-training"
"""Ends the name of a run of signatures on a date on which no day went on."""


@dataclass(frozen=True)
class RecordBook:
    """What records are read with: the content's numbers, and its formulas about days."""

    workbook: Workbook
    formulas: RecordFormulas

    @cached_property
    def ranges(self) -> dict[str, tuple[float, float]]:
        """What each reading can be at all, in SI. Content was checked, so each text has a value."""
        library, book = self.workbook.library, self.workbook.book
        return {
            name: (book.read(item.range[0], measure), book.read(item.range[1], measure))
            for name, item in library.readings.items()
            if item.range and item.measure and (measure := library.measures[item.measure])
        }

    def days(self, entries: Sequence[Entry]) -> list[RecordedDay]:
        """The runs that entries belong to, the oldest first; what was signed while none went on is its date's."""
        runs: dict[str, list[Entry]] = {}
        for entry in in_order(entries):
            runs.setdefault(entry["run"], []).append(entry)
        signed = {run.removesuffix(TRAINING): runs.pop(run) for run in [*runs] if run.endswith(TRAINING)}
        whole = {run: in_order([*found, *signed.get(run[:10], [])]) for run, found in runs.items()}
        dates = {run[:10] for run in runs}
        whole |= {date + TRAINING: found for date, found in signed.items() if date not in dates}
        return [RecordedDay(self, run, tuple(found)) for run, found in sorted(whole.items())]


@dataclass(frozen=True)
class RecordedDay:
    """One run."""

    book: RecordBook
    run: str
    entries: tuple[Entry, ...]
    """All of them in order, also those that no longer count."""

    @property
    def date(self) -> str:
        """The day on which it began, year first."""
        return self.run[:10]

    @cached_property
    def standing(self) -> list[Entry]:
        """The entries that count, in order."""
        return standing(self.entries)

    @cached_property
    def frozen(self) -> Entry | None:
        """The plan as it was when the day began; the first, where several phones froze one."""
        return next((entry for entry in self.standing if entry["kind"] == "plan"), None)

    @cached_property
    def settings(self) -> dict[str, float | str]:
        """Inputs, choices and constants as frozen, as far as this content still has and takes them; else the farm's."""
        workbook = self.book.workbook
        frozen = self.frozen["values"] if self.frozen else {}
        fitting = {name: value for name, value in frozen.items() if self._fits(name, value)}
        return dict(workbook.settler.settle({**workbook.plan, **fitting}, {}))

    @cached_property
    def plan(self) -> Values:
        """Every number that the plan had: as frozen where it was and is still of its kind, else as computed here."""
        computed = self.book.workbook.compute(self.settings).values
        frozen = self.frozen["values"] if self.frozen else {}
        kept = {name: value for name, value in frozen.items() if _alike(computed.get(name, value), value)}
        return {**computed, **kept}

    @cached_property
    def figures(self) -> Figures:
        """What each reading comes to."""
        return figures_of(self.entries, self.book.workbook.library, self.plan)

    @cached_property
    def known(self) -> Values:
        """All that a formula about the day may name."""
        return {**self.plan, **self.figures.values}

    @cached_property
    def tallies(self) -> dict[str, float]:
        """What the day came to, by tally; what nobody wrote down is not there."""
        trees = self.book.formulas.tallies
        worked = {name: work_out(self.book.workbook, tree, self.known) for name, tree in trees.items()}
        return {name: value for name, value in worked.items() if value is not None}

    @cached_property
    def outside(self) -> list[tuple[Entry, list[Entry]]]:
        """Readings outside their limits, or answered while on the way there, each with the actions that answer it."""
        actions = [entry for entry in self.standing if entry["kind"] == "action"]
        answered = {action["answers"] for action in actions}
        return [
            (entry, [action for action in actions if action["answers"] == entry["id"]])
            for entry in self.standing
            if "value" in entry and (verdict_of(entry) in ("low", "high") or entry["id"] in answered)
        ]

    def _fits(self, name: str, value: float | str) -> bool:
        givens = self.book.workbook.givens
        if name in givens.choices:
            return value in givens.options[name]
        if isinstance(value, str):
            return False
        return name in givens.constants or (name in givens.inputs and not givens.inputs[name].refuses(value))


def _alike(one: float | str, other: float | str) -> bool:
    return isinstance(one, str) == isinstance(other, str)
