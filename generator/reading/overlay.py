"""Lays a farm's own entries over the shared ones, mapping by mapping, so that neither touches the other's files."""

from __future__ import annotations

from generator.problems import Problem, did_you_mean
from generator.reading.tree import Node

REMOVE = "~remove"
"""What a farm writes in place of a value to take it out."""
AFTER = "~after"
"""Names the entry that one comes after; what a farm adds stands last without it."""
_WHOLE = ("source",)
"""Never merged key by key: a place in one work says nothing about another."""


def lay_over(base: dict[str, Node], over: dict[str, Node], problems: list[Problem]) -> dict[str, Node]:
    """The base with the overlay's values put in: scalars and lists are replaced, mappings merged key by key."""
    merged = dict(base)
    for key, node in over.items():
        under = base.get(key)
        if node.value == REMOVE:
            if under is None:
                hint = did_you_mean(key, base, "take the line out")
                problems.append(Problem(node.place, f"there is no `{key}` here to remove", hint))
            merged.pop(key, None)
        elif isinstance(node.value, dict):
            inside = under.value if under and isinstance(under.value, dict) and key not in _WHOLE else {}
            written = {name: inner for name, inner in node.value.items() if name != AFTER}
            value = lay_over(inside, written, problems)
            merged[key] = under._replace(value=value) if under and inside else node._replace(value=value)
            if AFTER in node.value:
                merged = _moved(merged, key, node.value[AFTER], problems)
        else:
            merged[key] = node
    return merged


def _moved(entries: dict[str, Node], key: str, after: Node, problems: list[Problem]) -> dict[str, Node]:
    """The entries with `key` behind the one that is named."""
    others = {name: node for name, node in entries.items() if name != key}
    if after.value not in others:
        hint = did_you_mean(str(after.value), others, "name an entry of the same list")
        problems.append(Problem(after.place, f"there is no `{after.value}` here to come after", hint))
        return entries
    moved: dict[str, Node] = {}
    for name, node in others.items():
        moved[name] = node
        if name == after.value:
            moved[key] = entries[key]
    return moved


def refuse_removal(entries: dict[str, Node], problems: list[Problem]) -> None:
    """Reports each `~remove` and `~after` in a layer that has nothing below it."""
    for key, node in entries.items():
        if key == AFTER:
            hint = "in shared content write it where it belongs"
            problems.append(Problem(node.place, f"`{AFTER}` in shared content", hint))
        elif node.value == REMOVE:
            hint = "only a farm's overlay removes; take the line out"
            problems.append(Problem(node.place, f"`{REMOVE}` in shared content", hint))
        elif isinstance(node.value, dict):
            refuse_removal(node.value, problems)
