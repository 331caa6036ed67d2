"""`numbers`: what a plan comes to, as a table, as JSON, or with the chain of workings behind one quantity."""

from __future__ import annotations

import json
import sys
from argparse import Namespace

from generator.command_line.chain import print_chain
from generator.command_line.findings import in_one_line
from generator.command_line.ordering import read_order
from generator.command_line.table import as_typed, print_table, titled
from generator.pipeline.figuring import figure, open_content
from generator.problems import Place, Problem, ProblemsFound, did_you_mean
from generator.telling.alerts import refusal
from generator.telling.edition import Edition

REFUSED = 2
CHOICE = "choice"
"""The unit of what is one of a list."""


def run(options: Namespace) -> int:
    """Prints to standard output; values that cannot be used are refused with status 2 before anything is printed."""
    reading, workbook = open_content(read_order(options))
    try:
        edition = figure(reading, workbook, options.plan, options.set)
        if options.why:
            _stop_at_unknown(options.why, edition)
    except ProblemsFound as found:
        for problem in found.problems:
            print(in_one_line(problem), file=sys.stderr)
        return REFUSED
    if options.why:
        print_chain(edition, options.why)
    elif options.json:
        json.dump(contract(edition), sys.stdout, ensure_ascii=False, indent=1)
        print()
    else:
        print_table(edition)
    return 0


def contract(edition: Edition) -> dict[str, dict[str, object]]:
    """Every quantity in SI by id, what is one of a list by its id. A value that is refused is null and says why."""
    library, day = edition.library, edition.day
    told: dict[str, dict[str, object]] = {
        name: {"value": edition.settings[name], "unit": CHOICE, "title": choice.title, "from": []}
        for name, choice in library.choices.items()
    }
    for name, item in edition.workbook.items.items():
        told[name] = {
            "value": day.values.get(name),
            "unit": CHOICE if item.measure.form == "member" else item.measure.unit,
            "title": titled(item, edition),
            "from": list(edition.workbook.uses(name)),
        }
        if name in day.refused:
            told[name]["refused"] = as_typed(refusal(edition, name))
    return told


def _stop_at_unknown(name: str, edition: Edition) -> None:
    known = edition.workbook.ids
    if name not in known:
        hint = did_you_mean(name, known, "`numbers` without `--why` prints all of them")
        raise ProblemsFound([Problem(Place("--why"), f"unknown quantity `{name}`", hint)])
