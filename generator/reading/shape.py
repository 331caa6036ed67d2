"""Plain data to typed entries, and what does not fit as problems with places."""

from __future__ import annotations

from collections.abc import Mapping

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from generator.model.library import Library
from generator.problems import Problem, ProblemsFound, did_you_mean
from generator.reading.tree import Node
from generator.reading.wording import Complaint, describe

Entries = Mapping[str, Mapping[str, Node]]
"""Kind to id to entry, both layers merged."""


def give_shape(entries: Entries, shared: Entries) -> Library:
    """The checked library. `shared` is the layer below, to tell a misspelt id in an overlay. Raises ProblemsFound."""
    data = {kind: {name: node.plain() for name, node in named.items()} for kind, named in entries.items()}
    try:
        return Library.model_validate(data)
    except ValidationError as error:
        details = error.errors(include_url=False)
        raise ProblemsFound(_problem(detail, entries, shared) for detail in details) from None


def _problem(detail: ErrorDetails, entries: Entries, shared: Entries) -> Problem:
    kind, name, *rest = detail["loc"]
    entry = entries[str(kind)][str(name)]
    path = _written(entry, tuple(rest))
    nodes = list(entry.along(path))
    about_key = detail["type"] == "extra_forbidden" or path[-1:] == ("[key]",)
    place = nodes[-1].key if about_key or isinstance(nodes[-1].value, dict | list) else nodes[-1].place
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
        elif position == len(location) - 1 and not (isinstance(part, int) or part in ("row", "rows", "plain", "point")):
            path.append(part)
    return tuple(path)
