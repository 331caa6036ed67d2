"""An order in which everything comes after what it uses."""

from __future__ import annotations

from collections.abc import Mapping
from graphlib import CycleError, TopologicalSorter


def put_in_order(uses: Mapping[str, tuple[str, ...]]) -> tuple[tuple[str, ...], list[tuple[str, ...]]]:
    """The ids in order, and every ring of ids that use each other; with rings, the order lacks what is in them.

    Ids are sorted first, so that the order is the same at every run.
    """
    left = {name: tuple(sorted(uses[name])) for name in sorted(uses)}
    rings: list[tuple[str, ...]] = []
    while True:
        try:
            order = tuple(name for name in TopologicalSorter(left).static_order() if name in uses)
            return order, rings
        except CycleError as error:
            ring = tuple(reversed(error.args[1][1:]))
            first = ring.index(min(ring))
            rings.append(ring[first:] + ring[:first])
            left = {name: used for name, used in left.items() if name not in ring}
