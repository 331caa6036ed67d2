"""Plain data to typed entries, and what does not fit as problems with places."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from generator.model.library import Library
from generator.problems import Place, Problem, did_you_mean, stop_at
from generator.reading.complaint import EMPTY, Complaint
from generator.reading.tree import Node
from generator.reading.wording import describe

Entries = Mapping[str, Mapping[str, Node]]
"""Kind to id to entry, both layers merged."""


def give_shape(entries: Entries, shared: Entries) -> Library:
    """The checked library. `shared` is the layer below, to tell a misspelt id in an overlay. Raises ProblemsFound."""
    data = {kind: {name: node.plain() for name, node in named.items()} for kind, named in entries.items()}
    problems: list[Problem] = []
    try:
        library = Library.model_validate(data)
    except ValidationError as error:
        problems = [_problem(detail, entries, shared) for detail in error.errors(include_url=False)]
    problems.extend(_empty_values(entries, {problem.place for problem in problems}))
    stop_at(problems)
    return library


def _empty_values(entries: Entries, reported: set[Place]) -> Iterator[Problem]:
    """Keys without a value, where the checker lets them pass because the key may be left out."""
    waiting = [(name, node) for named in entries.values() for name, node in named.items()]
    while waiting:
        key, node = waiting.pop()
        if node.value is None and reported.isdisjoint({node.place, node.key}):
            yield Problem(node.key, f"`{key}` is empty", EMPTY)
        elif isinstance(node.value, dict):
            waiting.extend(node.value.items())
        elif isinstance(node.value, list):
            waiting.extend((key, item) for item in node.value)


def _problem(detail: ErrorDetails, entries: Entries, shared: Entries) -> Problem:
    kind, name, *rest = detail["loc"]
    entry = entries[str(kind)][str(name)]
    path = _written(entry, tuple(rest))
    nodes = list(entry.along(path))
    about_key = detail["type"] == "extra_forbidden" or path[-1:] == ("[key]",)
    place = nodes[-1].key if about_key or nodes[-1].value is None else nodes[-1].place
    said = describe(Complaint(detail, str(kind), str(name), path, nodes[-1]))
    if detail["type"] == "missing" and not path[:-1] and entry.layer == "farm":
        near = did_you_mean(str(name), set(shared.get(str(kind), ())) - {str(name)})
        return Problem(place, said.fault, f"{near} an overlay changes an entry under its own id" if near else said.hint)
    return Problem(place, said.fault, said.hint)


def _written(entry: Node, location: tuple[str | int, ...]) -> tuple[str | int, ...]:
    """The location without the parts that are not written: tags of alternatives, positions in a short form."""
    node, path = entry, list[str | int]()
    for position, part in enumerate(location):
        found = node.child(part)
        if found is not None:
            node = found
            path.append(part)
        elif part == "[key]" or (
            position == len(location) - 1 and isinstance(part, str) and isinstance(node.value, dict)
        ):
            path.append(part)
    return tuple(path)
