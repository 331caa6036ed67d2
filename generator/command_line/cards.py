"""`cards`: papers to print, as PDF."""

from __future__ import annotations

from argparse import Namespace
from dataclasses import replace

from generator.command_line.findings import counted, report_stops
from generator.command_line.ordering import read_order
from generator.papers.printing import print_some
from generator.pipeline.figuring import figure, open_content
from generator.pipeline.progress import Progress
from generator.reading.translation import Translation
from generator.telling.listing import usual_size


def run(options: Namespace) -> int:
    """Writes the wanted papers, each as a file of its own, and says where."""
    order = read_order(options)
    with Progress() as say:
        say("Reading the content")
        reading, workbook = open_content(order)
        edition = figure(reading, workbook, options.plan)
        if options.lang:
            words = Translation.of(options.lang, (reading.shared, reading.farm))
            edition = replace(edition, translate=words.text, language=options.lang)
        say("Setting the papers")
        size = options.paper or usual_size(edition.first)
        files = print_some(edition, options.station, size, order.papers)
    options.out.mkdir(parents=True, exist_ok=True)
    for name, content in files.items():
        (options.out / name).write_bytes(content)
    print(f"{counted(len(files), 'paper')}: {options.out / next(iter(files)) if len(files) == 1 else options.out}")
    report_stops(edition)
    return 0
