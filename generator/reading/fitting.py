"""Ids that exist and still do not fit where they stand: an option of another choice, a timer that is no time."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.model.library import Library
from generator.model.quantity import Quantity
from generator.problems import Problem, did_you_mean
from generator.reading.reading import Reading
from generator.reading.references import known_quantities


def check_fitting(reading: Reading) -> list[Problem]:
    """Problems with what is named in steps, options, watches and requirements."""
    quantities = known_quantities(reading.library)
    return [
        *_steps(reading, quantities),
        *_labels(reading),
        *_options(reading, quantities),
        *_cures(reading, quantities),
    ]


def _steps(reading: Reading, quantities: dict[str, Quantity]) -> Iterator[Problem]:
    library = reading.library
    for name, procedure in library.procedures.items():
        for step_name, step in procedure.steps.items():
            path = ("procedures", name, "steps", step_name)
            if step.timer and not _is_time_taken(library, quantities[step.timer]):
                fault = f"`{step.timer}` is not a time that can run down"
                yield Problem(reading.place(*path, "timer"), fault, "name a quantity whose measure is a time taken")
            yield from _only(reading, step.only, *path)


def _labels(reading: Reading) -> Iterator[Problem]:
    for name, paper in reading.library.papers.items():
        for key, line in (paper.labels.lines if paper.labels else {}).items():
            yield from _only(reading, line.only, "papers", name, "labels", "lines", key)


def _only(reading: Reading, only: Mapping[str, tuple[str, ...]], kind: str, name: str, *path: str) -> Iterator[Problem]:
    for choice, options in only.items():
        known = reading.library.choices[choice].options
        for number, option in enumerate(options):
            if option not in known:
                place = reading.place(kind, name, *path, "only", choice, number)
                hint = did_you_mean(option, known, "options: " + ", ".join(known))
                yield Problem(place, f"`{option}` is no option of `{choice}`", hint)


def _is_time_taken(library: Library, quantity: Quantity) -> bool:
    measure = library.measures[quantity.measure]
    return measure.unit == "s" and measure.form != "clock"


def _options(reading: Reading, quantities: dict[str, Quantity]) -> Iterator[Problem]:
    for name, choice in reading.library.choices.items():
        for option_name, option in choice.options.items():
            for key in option.values:
                if quantities[key].formula is not None:
                    place = reading.key_place("choices", name, "options", option_name, "values", key)
                    yield Problem(place, f"`{key}` is computed, so an option cannot set it", "set what it depends on")


def _cures(reading: Reading, quantities: dict[str, Quantity]) -> Iterator[Problem]:
    library = reading.library
    named = [
        (reading.place("watches", name, "inputs", number), key)
        for name, watch in library.watches.items()
        for number, key in enumerate(watch.inputs)
    ] + [
        (reading.place("quantities", name, "require", number, "input"), requirement.input)
        for name, quantity in library.quantities.items()
        for number, requirement in enumerate(quantity.require)
        if requirement.input
    ]
    for place, key in named:
        if key in quantities and quantities[key].default is None:
            yield Problem(place, f"`{key}` is not an input", "name an input or a choice that a person can change")
