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
    merged, after = dict(base), dict[str, Node]()
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
            after |= {key: node.value[AFTER]} if AFTER in node.value else {}
        else:
            merged[key] = node
    return _in_order(merged, after, problems)


def _in_order(entries: dict[str, Node], after: dict[str, Node], problems: list[Problem]) -> dict[str, Node]:
    """The entries, those that name another behind that one, in the order in which they are written."""
    followers: dict[str, list[str]] = {}
    for key, node in after.items():
        named = _named(node)
        if named not in entries:
            hint = did_you_mean(named, entries, "name an entry of the same list")
            fault = f"there is no `{named}` here to come after" if named else f"`{AFTER}` takes one name"
            problems.append(Problem(node.place, fault, hint))
        elif key in _chain(named, after):
            hint = "let one of them stand where it is"
            problems.append(Problem(node.place, f"`{key}` comes after itself", hint))
        else:
            followers.setdefault(named, []).append(key)
    moved = {key for keys in followers.values() for key in keys}
    ordered: dict[str, Node] = {}
    waiting = [key for key in reversed(entries) if key not in moved]
    while waiting:
        key = waiting.pop()
        ordered[key] = entries[key]
        waiting += reversed(followers.get(key, []))
    return ordered


def _named(node: Node) -> str:
    return node.value if isinstance(node.value, str) else ""


def _chain(key: str, after: dict[str, Node]) -> list[str]:
    """A key, what it comes after, what that comes after, and so on."""
    found = [key]
    while found[-1] in after and (following := _named(after[found[-1]])) not in found:
        found.append(following)
    return found


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
