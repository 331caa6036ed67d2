"""Ids that entries use must exist, and be of the kind that fits there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from generator.model.leaves import Leaf, leaves
from generator.model.library import Library
from generator.model.quantity import Quantity
from generator.model.roles import Human, Refers
from generator.problems import Problem, did_you_mean
from generator.reading.placeholders import placeholders, stray_brace
from generator.reading.reading import Reading

_NOUN = {"quantities": "quantity", "choices": "choice", "supplies": "supply"}


def known_quantities(library: Library) -> dict[str, Quantity]:
    """Every id that has a value, with its quantity; a family over a set counts as one id for each member."""
    known: dict[str, Quantity] = {}
    for name, quantity in library.quantities.items():
        members = library.sets[quantity.each].members if quantity.each in library.sets else {}
        known.update({f"{name}_{member}": quantity for member in members} if quantity.each else {name: quantity})
    return known


def check_references(reading: Reading) -> list[Problem]:
    """Problems for ids of nothing, and for names in braces that are no quantity or choice."""
    library = reading.library
    known: dict[str, Mapping[str, object]] = {kind: getattr(library, kind) for kind in Library.model_fields}
    known["quantities"] = known_quantities(library)
    problems: list[Problem] = []
    for leaf in leaves(library, Refers, Human):
        if isinstance(leaf.role, Refers):
            problems.extend(_unknown_id(reading, leaf, leaf.role, known))
        elif "{" in leaf.text or "}" in leaf.text:
            problems.extend(_bad_names(reading, leaf, {**known["quantities"], **library.choices}))
    return problems


def _unknown_id(
    reading: Reading, leaf: Leaf, role: Refers, known: Mapping[str, Mapping[str, object]]
) -> Iterator[Problem]:
    if any(leaf.text in known[kind] for kind in role.kinds):
        return
    place = (reading.key_place if leaf.is_key else reading.place)(leaf.kind, leaf.name, *leaf.path)
    names = [name for kind in role.kinds for name in known[kind]]
    noun = " or ".join(_NOUN.get(kind, kind.removesuffix("s")) for kind in role.kinds)
    yield Problem(
        place,
        f"unknown {noun} `{leaf.text}`",
        _removed(reading, leaf.text, role.kinds) or _hint(reading, leaf.text, names, noun),
    )


def _removed(reading: Reading, name: str, kinds: Iterable[str]) -> str:
    """What to do where the farm itself took the entry out; the fault is not in what is shared."""
    nodes = [node for kind in kinds if (node := reading.removed.get(kind, {}).get(name))]
    return f"the farm takes it out at {nodes[0].place}: take out in its folder what names it too" if nodes else ""


def _hint(reading: Reading, name: str, names: list[str], noun: str) -> str:
    family = reading.library.quantities.get(name)
    if noun.startswith("quantity") and family and family.each:
        return f"it is one for each member of `{family.each}`: write `{name}_` and the member"
    article = "an" if noun[0] in "aeiou" else "a"
    return did_you_mean(name, names, f"write {article} {noun} with this id, or take it out")


def _bad_names(reading: Reading, leaf: Leaf, known: Mapping[str, object]) -> Iterator[Problem]:
    stray = stray_brace(leaf.text)
    if stray is not None:
        place = reading.spot(leaf.kind, leaf.name, *leaf.path, column=stray)
        yield Problem(place, "a brace without its partner", "write the id of a quantity as `{id}`")
    if isinstance(leaf.role, Human) and leaf.role.names:
        return
    for found in placeholders(leaf.text):
        if found.name in known or (found.name == "member" and _is_family(reading.library, leaf)):
            continue
        place = reading.spot(leaf.kind, leaf.name, *leaf.path, column=found.column)
        if found.name:
            hint = _removed(reading, found.name, ("quantities", "choices"))
            hint = hint or _hint(reading, found.name, [*known], "quantity")
            yield Problem(place, f"unknown quantity `{found.name}`", hint)
        else:
            yield Problem(place, f"`{found.written}` is not the name of a quantity", "write `{id}` or `{id first}`")


def _is_family(library: Library, leaf: Leaf) -> bool:
    return leaf.kind == "quantities" and library.quantities[leaf.name].each is not None
