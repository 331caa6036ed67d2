"""`records`: check, merge and report the records of days."""

from __future__ import annotations

from argparse import Namespace

from generator.command_line.findings import counted, report
from generator.command_line.ordering import read_order
from generator.pipeline.progress import Progress
from generator.pipeline.recording import gather, write_records

REFUSED = 1


def run(options: Namespace) -> int:
    """Writes what could be taken, then names what could not; status 1 where anything was refused."""
    with Progress() as say:
        say("Reading the records")
        gathering = gather(read_order(options), options.files)
        written = write_records(gathering, options.out, say) if gathering.entries else []
    if written:
        print(f"{counted(len(gathering.entries), 'entry').replace('entrys', 'entries')} taken. Written:")
    for path in written:
        print(f"  {path}")
    if gathering.problems:
        report(gathering.problems)
    return REFUSED if gathering.problems or not written else 0
