"""A scope with one of everything that a formula may name, and values for it."""

from __future__ import annotations

import json
from collections.abc import Callable
from functools import cache
from typing import Any

from generator.formula import (
    Argument,
    Function,
    Kind,
    Measured,
    Node,
    Scope,
    Table,
    Word,
    Wording,
    check,
    parse,
    to_javascript,
    to_python,
)
from generator.formula.python_code import NAMES
from generator.formula.runtime import Table as Numbers
from tests.formula.phone_machine import PhoneMachine
from tests.units.shop import BOOK, MEASURES


def of(measure: str) -> Measured:
    return Measured(BOOK.dimension(MEASURES[measure].unit), MEASURES[measure].point)


UNITS_OF = {
    **dict.fromkeys(["a", "b", "c", "d"], "1"),
    "loaves": "loaf",
    "loaf_mass": "kg/loaf",
    "mass": "kg",
    "oven": "K",
    "room": "K",
    "heat": "J",
    **dict.fromkeys(["rate_mix", "rate_bake", "rate_pack"], "loaf/s"),
    **dict.fromkeys(["work_mix", "work_bake", "work_pack"], "s/loaf"),
}
SCOPE = Scope(
    BOOK,
    values={
        **{name: Measured(BOOK.dimension(unit), unit == "K") for name, unit in UNITS_OF.items()},
        "flour": Word(frozenset({"white", "rye"})),
        "slowest": Word(frozenset({"mix", "bake", "pack"})),
    },
    sets={"work": ("mix", "bake", "pack"), "night": ("bake",), "nobody": ()},
    functions={
        "vapour": Function("vapour", (Argument("t", Measured(), "degC"),), of("pressure")),
        "share_of": Function("share_of", (Argument("whole", of("mass")), Argument("share", Measured())), of("mass")),
    },
    tables={
        "proof": Table("proof", (of("temperature"),), of("duration")),
        "rise": Table("rise", (of("temperature"), Measured()), Measured()),
    },
)
VALUES: dict[str, float | str] = {
    "a": 2.0, "b": -3.5, "c": 0.25, "d": 7.0, "loaves": 24.0, "loaf_mass": 0.9, "mass": 12.5, "oven": 503.15,
    "room": 295.15, "heat": 4200.0, "rate_mix": 0.02, "rate_bake": 0.015, "rate_pack": 0.05, "work_mix": 50.0,
    "work_bake": 66.0, "work_pack": 20.0, "flour": "rye", "slowest": "bake",
}  # fmt: skip
TABLES: dict[str, Numbers] = {
    "proof": {"axes": [[291.15, 295.15, 299.15]], "values": [28800.0, 18000.0, 10800.0], "hold": False},
    "rise": {"axes": [[291.15, 299.15], [0.0, 1.0]], "values": [[1.0, 2.0], [3.0, 5.0]], "hold": True},
}
FUNCTIONS: dict[str, tuple[str, str]] = {
    "vapour": ("t_", "(611.21 * exp(over(((18.678 - over(t_, 234.5)) * t_), (257.14 + t_))))"),
    "share_of": ("whole_, share_", "(whole_ * share_)"),
}
TITLES = {"flour": "Flour", "oven": "Oven", "mass": "Dough", "loaf_mass": "Dough for one loaf", "loaves": "Loaves"}


def tree_of(text: str, member: str = "") -> Node:
    from dataclasses import replace

    return parse(text, replace(SCOPE, member=member))


def kind_of(text: str) -> Kind:
    return check(tree_of(text), SCOPE)


def by_python(tree: Node) -> Any:
    space: dict[str, Any] = {**NAMES, "tables": TABLES, "functions": {}}
    for name, (arguments, body) in FUNCTIONS.items():
        space["functions"][name] = eval(f"lambda {arguments}: {body}", space)
    return eval(to_python(tree, BOOK), space, {"v": VALUES} | {"tables": TABLES})


@cache
def phone() -> PhoneMachine:
    functions = ", ".join(f"{name}: ({arguments}) => {body}" for name, (arguments, body) in FUNCTIONS.items())
    return PhoneMachine(
        f"const v = {json.dumps(VALUES)}; const tables = {json.dumps(TABLES)}; const functions = {{{functions}}};"
        "const tried = (f) => { try { return f(); } catch (e) { if (e instanceof NotANumber) return null; throw e; } };"
    )


def by_phone(tree: Node) -> Any:
    """None where it has no number."""
    return phone().run(f"tried(() => {to_javascript(tree, BOOK)})")


def wording(write: Callable[[float], str] = repr) -> Wording:
    def title(name: str) -> str:
        return TITLES.get(name, name.replace("_", " ").capitalize())

    return Wording(BOOK, title, lambda _, option: option.capitalize(), lambda name: UNITS_OF[name], VALUES, str, write)
