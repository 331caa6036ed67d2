"""Writes a learned figure into a farm's own files, touches nothing else there, and takes back what does not read."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from generator.problems import Place, Problem, ProblemsFound
from generator.reading.layer import read_layer
from generator.reading.putting import put
from generator.reading.tree import Node

OWN = "farm's own figure"
NEW_FILE = "quantities/learned.yml"
_NEW_HEAD = "# Figures learned from days, as they were accepted.\n"
_QUOTED = re.compile(r"'(?:[^']|'')*'|\"(?:\\.|[^\"\\])*\"")
_EMPTY = re.compile(r"\{\s*\}")
_PLAIN = re.compile(r"[^,\]}\n]*?(?=\s*(?:[,\]}]|\s#|$))", re.MULTILINE)


class Change(NamedTuple):
    """A text put in place of `length` characters of a file, or a new end of it where `line` is nought."""

    path: Path
    line: int
    column: int
    length: int
    text: str


def write_figure(farm: Path, plan: str, name: str, written: str, in_plan: bool, accepted: Callable[[], bool]) -> Path:
    """Writes the value of an input, into the plan where that has one or where `in_plan`, else among the farm's figures.

    `accepted` reads the content again and tells whether the value has arrived. Returns the file that was changed.
    Raises ProblemsFound; then, and after whatever else cuts it off, the file is as it was.
    """
    change = _find_place(farm, plan, name, written, in_plan)
    before = change.path.read_bytes() if change.path.exists() else None
    put(change.path, _changed(before, change))
    try:
        if accepted():
            return change.path
        hint = f"write `{written}` there by hand"
        raise ProblemsFound([Problem(Place(str(change.path)), f"the figure of `{name}` could not be put in", hint)])
    except BaseException:
        _restore(change.path, before)
        raise


def _find_place(farm: Path, plan: str, name: str, written: str, in_plan: bool) -> Change:
    problems: list[Problem] = []
    own = read_layer(farm, "farm", problems)
    if problems:
        raise ProblemsFound(problems)
    values = _child(own["plans"].get(plan), "values")
    planned, entry = _child(values, name), own["quantities"].get(name)
    if planned:
        return _instead(planned, written)
    if in_plan and values:
        return _first_child(values, f"{name}: {written}")
    if in_plan:
        hint = f"copy the plan into the farm's folder and write `{name}: {written}` under its `values`"
        raise ProblemsFound([Problem(Place(str(farm)), f"the plan `{plan}` is not in the farm's own folder", hint)])
    default = _child(entry, "default")
    if default:
        return _instead(default, written)
    if entry and isinstance(entry.value, dict):
        owned = [] if entry.child("source") else [f"source: {OWN}"]
        return _first_child(entry, f"default: {written}", *owned)
    path = farm / NEW_FILE
    head = "" if path.exists() else _NEW_HEAD
    return Change(path, 0, 0, 0, f"{head}{name}:\n  default: {written}\n  source: {OWN}\n")


def _child(node: Node | None, key: str) -> Node | None:
    return node.child(key) if node else None


def _instead(node: Node, written: str) -> Change:
    path = Path(node.place.file)
    rest = _line(node.place)[node.place.column - 1 :]
    found = (_QUOTED if node.style else _PLAIN).match(rest)
    return Change(path, node.place.line, node.place.column, len(found[0]) if found else 0, written)


def _line(place: Place) -> str:
    return Path(place.file).read_text("utf-8-sig").replace("\r\n", "\n").split("\n")[place.line - 1]


def _first_child(node: Node, *lines: str) -> Change:
    """New keys before the first one of a mapping: on lines of their own, or in its braces where it stands in such."""
    if node.value == {}:
        braces = _EMPTY.search(_line(node.key), node.key.column - 1)
        at, length = (braces.start() + 1, len(braces[0])) if braces else (node.key.column, 0)
        return Change(Path(node.key.file), node.key.line, at, length, f"{{{', '.join(lines)}}}" if braces else "")
    first = next(iter(node.value.values())) if isinstance(node.value, dict) else node
    apart = ", " if first.key.line == node.key.line else "\n" + " " * (first.key.column - 1)
    return Change(Path(first.key.file), first.key.line, first.key.column, 0, "".join(line + apart for line in lines))


def _changed(before: bytes | None, change: Change) -> bytes:
    text = (before or b"").decode("utf-8")
    mark = "\ufeff" if text.startswith("\ufeff") else ""
    end = "\r\n" if "\r\n" in text else "\n"
    lines = text.removeprefix("\ufeff").replace("\r\n", "\n").split("\n")
    if change.line == 0:
        gap = "" if lines[-1] == "" else "\n"
        made = "\n".join(lines) + gap + change.text
    else:
        line, at = lines[change.line - 1], change.column - 1
        lines[change.line - 1] = line[:at] + change.text + line[at + change.length :]
        made = "\n".join(lines)
    return (mark + made.replace("\n", end)).encode()


def _restore(path: Path, before: bytes | None) -> None:
    if before is None:
        path.unlink()
    else:
        put(path, before)
