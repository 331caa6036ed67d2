"""What programs on the pages about the plan read besides the formulas; other pages do without it."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from generator.model.leaves import leaves
from generator.model.roles import Human, Refers
from generator.telling.edition import Edition, Settings
from generator.telling.figures import Figures
from generator.telling.words import Words

FILE = "phone/plan_content.js"
MARK = "planning_"
"""Words whose ids begin so are sent to these programs."""


def plan_content(edition: Edition, figures: Figures, words: Words) -> dict[str, str]:
    """The file by its path."""
    library = edition.library
    said = {
        "words": words.beginning(MARK),
        "titles": {name: figures.title_of(name) for name in _named(edition)},
        "refusals": {key: edition.translate(text) for key, text in edition.workbook.sentences().items()},
        "farmPlans": _farm_plans(edition),
        "planSays": edition.translate(library.boards["today"].says) if "today" in library.boards else "",
        "people": list(library.this_farm.crew),
        "watches": _grave_watches(edition),
        **{kind: _entries(edition, kind) for kind in ("views", "crews", "questions")},
    }
    return {FILE: "".join(f"export const {name} = {_written(value)};\n" for name, value in said.items())}


def _named(edition: Edition) -> list[str]:
    """Ids whose titles may have to be said: all that can be set or doubted, and what these pages show."""
    givens = edition.workbook.givens
    kinds = ("views", "crews", "questions", "boards")
    shown = {leaf.text for leaf in leaves(edition.library, Refers, kinds=kinds)}
    known = edition.workbook.items
    return sorted({*givens.inputs, *givens.choices, *givens.doubts, *(name for name in shown if name in known)})


def _farm_plans(edition: Edition) -> list[dict[str, Any]]:
    """The farm's plans as changes to the one that the site shows."""
    library, workbook = edition.library, edition.workbook
    return [
        {"title": edition.translate(plan.title), "changes": dict(_changes(edition, workbook.settle(plan.values, {})))}
        for name, plan in library.plans.items()
        if name != library.this_farm.plan
    ]


def _changes(edition: Edition, wanted: Settings) -> Iterator[tuple[str, float | str]]:
    """What has to be changed in the site's plan to come to the wanted settings: options first, then the values left."""
    workbook = edition.workbook
    options = {name: wanted[name] for name in workbook.givens.choices if wanted[name] != edition.settings[name]}
    yield from options.items()
    settled = workbook.settler.settle(workbook.plan, options)
    yield from ((name, wanted[name]) for name in workbook.givens.inputs if wanted[name] != settled[name])


def _grave_watches(edition: Edition) -> dict[str, dict[str, Any]]:
    """Stops and warnings: what is said of them away from the place where they stand."""
    known = edition.library.watches.items()
    return {
        name: {"title": edition.translate(watch.title), "stop": watch.stop}
        for name, watch in known
        if watch.stop or watch.signal in ("danger", "warning")
    }


def _entries(edition: Edition, kind: str) -> dict[str, dict[str, Any]]:
    """Entries of a kind as plain data, what people read in the edition's language."""
    library = edition.library
    found = {
        name: entry.model_dump(exclude_defaults=True, mode="json") for name, entry in getattr(library, kind).items()
    }
    for leaf in leaves(library, Human, kinds=[kind]):
        inside: Any = found[leaf.name]
        for step in leaf.path[:-1]:
            inside = inside[step]
        inside[leaf.path[-1]] = edition.translate(leaf.text)
    return found


def _written(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
