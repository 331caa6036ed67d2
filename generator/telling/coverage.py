"""How far the content goes: for each option of the choices that content counts, and what rests on memory alone."""

from __future__ import annotations

from dataclasses import dataclass

from generator.model.choice import Choice, Option
from generator.model.citations import citations
from generator.model.leaves import leaves
from generator.model.procedure import Procedure
from generator.model.roles import Human
from generator.model.source import Citation
from generator.reading.placeholders import placeholders
from generator.telling.edition import Edition


@dataclass(frozen=True)
class Covered:
    """The procedures for one option: how many of each state, and what keeps the others from being complete."""

    option: Option
    complete: int
    partial: int
    missing: tuple[str, ...]
    """Procedures without a row for it."""
    defaults: tuple[str, ...]
    """Quantities that another option brings and this one does not."""
    from_memory: tuple[str, ...]
    """Quantities that it brings from memory alone."""


def covered(edition: Edition) -> dict[str, object]:
    """What the page of what is covered shows."""
    there, total = translated(edition)
    return {"axes": coverage(edition), "remembered": remembered(edition), "there": there, "total": total}


def coverage(edition: Edition) -> list[tuple[Choice, list[Covered]]]:
    """Each choice that content counts, with its options."""
    texts: dict[str, list[str]] = {}
    for leaf in leaves(edition.library, Human, kinds=["procedures"]):
        texts.setdefault(leaf.name, []).append(leaf.text)
    rests_on = {name: _rests_on(edition, name, texts.get(name, [])) for name in edition.library.procedures}
    return [
        (choice, [_covered(edition, name, option, rests_on) for option in choice.options])
        for name, choice in edition.library.choices.items()
        if choice.covers
    ]


def _covered(edition: Edition, name: str, chosen: str, rests_on: dict[str, frozenset[str]]) -> Covered:
    choice = edition.library.choices[name]
    option = choice.options[chosen]
    brought = {quantity for each in choice.options.values() for quantity in each.values}
    lacking = set() if chosen == choice.default else brought - set(option.values)
    remembered = {quantity for quantity, value in option.values.items() if _from_memory(edition, value.source)}
    procedures = edition.library.procedures
    missing = [each for each, entry in procedures.items() if not _has_a_row(entry, name, chosen)]
    partial = {each for each in set(procedures) - set(missing) if rests_on[each] & (lacking | remembered)}
    met = frozenset[str]().union(*(rests_on[each] for each in partial))
    return Covered(
        option,
        len(procedures) - len(missing) - len(partial),
        len(partial),
        tuple(missing),
        tuple(sorted(lacking & met)),
        tuple(sorted(remembered & met)),
    )


def _has_a_row(procedure: Procedure, choice: str, chosen: str) -> bool:
    return any(chosen in step.only.get(choice, (chosen,)) for step in procedure.steps.values())


def _rests_on(edition: Edition, name: str, texts: list[str]) -> frozenset[str]:
    """Every quantity that a procedure shows or counts down, and all that these are computed from."""
    procedure = edition.library.procedures[name]
    shown = {place.name for text in texts for place in placeholders(text)} | set(procedure.targets)
    shown |= {value for step in procedure.steps.values() for value in (step.number, step.timer) if value}
    return frozenset[str]().union(*(edition.workbook.rests_on(each) for each in shown))


def remembered(edition: Edition) -> list[tuple[str, int]]:
    """Entries with the number of their statements that rest on memory alone, most first."""
    found: dict[str, list[bool]] = {}
    for kind, name, path, citation in citations(edition.library):
        place = "/".join(str(part) for part in (kind, name, *path[:-2]))
        found.setdefault(place, []).append(_from_memory(edition, (citation,)))
    counts: dict[str, int] = {}
    for place in (place for place, each in found.items() if all(each)):
        entry = "/".join(place.split("/")[:2])
        counts[entry] = counts.get(entry, 0) + 1
    return sorted(counts.items(), key=lambda pair: (-pair[1], pair[0]))


def _from_memory(edition: Edition, sources: tuple[Citation, ...]) -> bool:
    return all(edition.library.is_remembered(each) for each in sources)


def translated(edition: Edition) -> tuple[int, int]:
    """How many texts of the procedures are there in the edition's language, and how many there are."""
    texts = [leaf.text for leaf in leaves(edition.library, Human, kinds=["procedures"])]
    there = texts if edition.language == "en" else [text for text in texts if edition.translate(text) != text]
    return len(there), len(texts)
