"""The commands and their options. Standard library only: run.py reads them before any package is there."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path
from typing import Any

HERE = Path(__file__).resolve().parents[2]

ABOUT = """\
Checklists and a day's numbers, computed from what a farm writes down, on a phone that needs no signal.

Begin with `serve`. Everything else is for those who write content or publish the site."""

COMMANDS = {
    "serve": (
        "build the site and show it on this machine",
        "Checks the content, computes the numbers, builds the site into build/site and serves it to browsers\n"
        "of this machine. When nothing has changed the last build is served at once. A taken port moves on to the\n"
        "next. To reach phones, put the folder build/site on any https host: after one visit it needs no signal.",
    ),
    "build": (
        "build the site and stop",
        "Builds the whole site into build/site. The folder is replaced only when the new site is whole: after a fault\n"
        "the last good build is still there. The same content gives the same bytes.",
    ),
    "disk": (
        "pack the site to open from a disk or a stick",
        "Builds where something changed, and packs a copy of the site into build/disk/NAME.zip for machines without\n"
        "a network. Unpacked, its pages open as files: lists, ticks, the plan with all its numbers, search, papers.\n"
        "Ticks stay on that machine, and the code on a card still leads to the published site.",
    ),
    "farms": (
        "build the sites of many farms",
        "Builds a site for each farm's folder into build/farms/NAME/site, in as many processes as there are cores.\n"
        "Only farms in which something changed are built again, and papers that are equal are set once. A farm with\n"
        "faults keeps the site it had; the others are built all the same, and the status is then 1.\n\n"
        "  run.py farms ../farms/*\n\n"
        "Each farm's build stands alone, so a job runner can do the same with `build --farm FOLDER --into FOLDER`.",
    ),
    "check": (
        "report every fault in the content",
        "Reads and checks all content without building. Each fault is told with its place and what to do about it.\n"
        "Leaves with status 1 where there are faults.",
    ),
    "numbers": (
        "print the numbers of a plan",
        "Prints what a plan comes to: each quantity with its value in both systems of units and what it comes from.\n\n"
        "  run.py numbers --set air_temperature=85degF --set altitude=5000ft\n"
        "  run.py numbers --why water_total\n"
        "  run.py numbers --json --plan my_plan.yml\n\n"
        "Values that cannot be used are refused, one line each, with status 2.",
    ),
    "cards": (
        "print cards and other papers",
        "Writes the papers as PDF: a card for each station, the crew board, forms, labels and tags.\n\n"
        "  run.py cards --station packing_and_label --paper a4\n"
        "  run.py cards --plan my_plan.yml --out papers\n\n"
        "A text that does not fit is told with the card, the field, and how many lines to cut.",
    ),
    "watch": (
        "preview for authors: build again at every change",
        "Serves a preview on this machine and builds it again whenever a file of the content changes. Faults are told\n"
        "here and the last good preview stays. The preview has no offline part, so what it shows is always fresh.",
    ),
    "schema": (
        "write the JSON Schemas that editors use",
        "Writes one schema for each kind of entry, so that an editor completes and checks content while you type.\n"
        "With --check nothing is written: the status tells whether the schemas are up to date.",
    ),
    "words": (
        "collect the words for translators",
        "Collects every sentence that a person reads into translations/messages.pot of the shared content and takes\n"
        "what is new into each language there. To begin a language, copy messages.pot to its code, such as es.po.\n"
        "A farm's own translations, in its folder, take in what the shared ones of their language do not say yet.\n"
        "With --check nothing is written: the status tells whether every message is translated.",
    ),
    "parts": (
        "list the packages that are needed, with licences",
        "Writes the software bill of materials, requirements/parts.cdx.json: every package that builds and serves the\n"
        "site, with version, licence, hashes and what needs it, as CycloneDX JSON. With --check nothing is written.",
    ),
    "records": (
        "check, merge and report the records of days",
        "Takes in record files that phones wrote, in any order and as often as you like, and writes for each day the\n"
        "merged record, a table for spreadsheets and a report as PDF. The season book beside them, an SQLite file,\n"
        "counts the year; it can be made again from the files at any time. What cannot be taken is named, one line\n"
        "each, and the status is then 1.",
    ),
    "learn": (
        "propose new figures for the plan from the records of days",
        "Works out what the days teach: each figure with the evidence for it, beside the one planned. Nothing is\n"
        "changed before you accept it:\n\n"
        "  run.py learn day.json --farm ../our-farm --accept LESSON\n\n"
        "writes that figure into the farm's own folder, and leaves everything else there as it is.",
    ),
    "bench": (
        "measure the build and the site",
        "Measures how long reading, computing and building take and what the pages weigh, beside figures kept before.\n"
        "With --keep the new figures are kept.",
    ),
    "verify": (
        "compare a published site with build/site",
        "Fetches every file of the published site and compares it, byte for byte, with what was built. Asks for\n"
        "https, for kinds of files as browsers need them declared, and for the address that the site was built for.\n"
        "Run it after each publication.",
    ),
    "test": (
        "run all tests",
        "Runs every test, the quick ones first and those with a browser last. What follows is handed to pytest:\n\n"
        "  run.py test tests/formula -k point\n"
        "  run.py test -m 'not browser'",
    ),
}


class Parser(argparse.ArgumentParser):
    """Keeps the lines of its texts as they are written, and takes no shortened options."""

    def __init__(self, **settings: Any) -> None:  # noqa: ANN401 - handed on as they come
        keep_lines = argparse.RawDescriptionHelpFormatter
        super().__init__(**{"formatter_class": keep_lines, "allow_abbrev": False, **settings})


def read_options(words: Sequence[str]) -> argparse.Namespace:
    """The options that `words` ask for. Prints help or a fault and leaves by SystemExit, as argparse does."""
    parser = Parser(prog="run.py", description=ABOUT)
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", required=True)
    parts = {name: commands.add_parser(name, help=short, description=long) for name, (short, long) in COMMANDS.items()}
    for name in ("serve", "build", "disk", "check", "numbers", "cards", "watch", "words", "records", "learn", "bench"):
        _add_content(parts[name])
    for name in ("serve", "build", "disk", "watch", "verify"):
        _add_folder(parts[name], "--into", HERE / "build", "folder of the build (default: build)")
    for name in ("serve", "watch"):
        parts[name].add_argument("--port", type=_port, default=8000, help="first port to try (default: 8000)")
    for name in ("schema", "words", "parts"):
        parts[name].add_argument("--check", action="store_true", help="write nothing, only tell the state")
    _add_plan(parts["numbers"])
    _add_cards(parts["cards"])
    parts["bench"].add_argument("--keep", action="store_true", help="keep these figures to compare with later")
    told = "also a thousand procedures and several farms; takes some minutes"
    parts["bench"].add_argument("--large", action="store_true", help=told)
    parts["verify"].add_argument("address", metavar="ADDRESS", help="where the site is published: https://…/")
    _add_farms(parts["farms"])
    _add_records(parts)
    options, rest = parser.parse_known_args(words)
    if rest and options.command != "test":
        quoted = "; a value with a space needs quotes: --set 'ID=1500 m'" if getattr(options, "set", None) else ""
        parts[options.command].error(f"unknown: {' '.join(rest)}{quoted}")
    options.rest = rest
    return options


def _add_folder(part: argparse.ArgumentParser, name: str, default: Path | None, told: str) -> None:
    part.add_argument(name, metavar="FOLDER", type=Path, default=default, help=told)


def _add_content(part: argparse.ArgumentParser) -> None:
    _add_folder(part, "--content", HERE / "content", "folder that holds `shared` and `farms` (default: content)")
    _add_folder(part, "--farm", None, "the farm's own folder, anywhere (default: the demo farm of the content)")


def _add_cards(part: argparse.ArgumentParser) -> None:
    told = "only this procedure or paper; repeatable (default: all)"
    part.add_argument("--station", metavar="ID", action="append", default=[], help=told)
    told = "size of paper (default: as the farm's units)"
    part.add_argument("--paper", type=str.lower, choices=("a4", "us-letter"), help=told)
    part.add_argument("--plan", metavar="PLAN", help="a plan of the farm by its id, or a YAML file with values")
    part.add_argument("--lang", metavar="LANGUAGE", help="a language that the content is translated to (default: en)")
    _add_folder(part, "--out", HERE / "build" / "cards", "folder to write to (default: build/cards)")


def _add_plan(part: argparse.ArgumentParser) -> None:
    part.add_argument("--plan", metavar="PLAN", help="a plan of the farm by its id, or a YAML file with values")
    part.add_argument("--set", metavar="ID=VALUE", action="append", default=[], help="a value for this run; repeatable")
    told = part.add_mutually_exclusive_group()
    told.add_argument("--why", metavar="ID", help="the whole chain of workings behind one quantity")
    told.add_argument("--json", action="store_true", help="every quantity in SI units, for other programs")


def _add_farms(part: argparse.ArgumentParser) -> None:
    part.add_argument("farms", metavar="FARM", type=Path, nargs="+", help="a farm's own folder")
    _add_folder(part, "--content", HERE / "content", "folder that holds `shared` and `farms` (default: content)")
    _add_folder(part, "--into", HERE / "build" / "farms", "folder of the builds (default: build/farms)")


def _add_records(parts: dict[str, Parser]) -> None:
    for name in ("records", "learn"):
        parts[name].add_argument("files", metavar="FILE", type=Path, nargs="+", help="a record, or a folder of them")
    _add_folder(parts["records"], "--out", HERE / "build" / "records", "folder to write to (default: build/records)")
    told = "write what this lesson teaches into the farm's folder; repeatable"
    parts["learn"].add_argument("--accept", metavar="LESSON", action="append", default=[], help=told)


def _port(text: str) -> int:
    if not text.isdecimal() or not 1 <= int(text) <= 65535:
        raise argparse.ArgumentTypeError(f"`{text}` is not a port: give a whole number from 1 to 65535")
    return int(text)
