"""Everything after what it uses, in the same order however it is written, and rings named whole."""

from __future__ import annotations

import random

from generator.computing.ordering import put_in_order


def test_the_order_does_not_depend_on_how_it_is_written() -> None:
    chance = random.Random(3)
    names = [f"n{number}" for number in range(40)]
    uses = {name: tuple(chance.sample(names[:index], min(index, 3))) for index, name in enumerate(names)}
    expected, _ = put_in_order(uses)
    for _ in range(20):
        shuffled = [(name, tuple(chance.sample(used, len(used)))) for name, used in uses.items()]
        chance.shuffle(shuffled)
        assert put_in_order(dict(shuffled))[0] == expected
    for name, used in uses.items():
        assert all(expected.index(each) < expected.index(name) for each in used)


def test_what_is_given_from_outside_is_no_part_of_the_order() -> None:
    assert put_in_order({"a": ("given",), "b": ("a", "given")}) == (("a", "b"), [])


def test_every_ring_is_found_and_begins_with_its_first_name() -> None:
    uses = {"c": ("a",), "a": ("b",), "b": ("c",), "y": ("x",), "x": ("y", "a"), "z": ("z",), "free": ("a",)}
    _, rings = put_in_order(uses)
    assert sorted(rings) == [("a", "b", "c"), ("x", "y"), ("z",)]
