"""`parts`: the software bill of materials."""

from __future__ import annotations

from argparse import Namespace

from generator.command_line.findings import counted
from generator.pipeline.order import CHANGES, HERE, PACKAGES
from generator.pipeline.release import read_release
from generator.problems import Place, Problem, ProblemsFound
from generator.publishing.parts import bill_of_materials, parts_of

BILL = HERE / "requirements" / "parts.cdx.json"


def run(options: Namespace) -> int:
    """Writes it beside the lock, or with `--check` raises a problem where it is not up to date."""
    lock = PACKAGES.read_text(encoding="utf-8")
    bill = bill_of_materials(lock, "cone-to-cooler", read_release(CHANGES).version)
    if options.check and (not BILL.is_file() or BILL.read_text(encoding="utf-8") != bill):
        place = Place(BILL.relative_to(HERE).as_posix())
        raise ProblemsFound([Problem(place, "is not up to date", "run `python3 run.py parts`")])
    if not options.check:
        BILL.write_text(bill, encoding="utf-8", newline="\n")
    print(f"{counted(len(parts_of(lock)), 'package')}: {BILL}")
    return 0
