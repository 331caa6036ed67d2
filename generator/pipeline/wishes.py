"""The plan and the changed values that a person names for one run."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from generator.model.library import Library
from generator.problems import Place, Problem, ProblemsFound, as_shown, did_you_mean
from generator.reading.composer import compose
from generator.reading.files import shown_path
from generator.reading.text import read_text
from generator.reading.tree import Node


@dataclass(frozen=True)
class Wish:
    """A value for a quantity or a choice as a person writes it: `85degF`, `stirred`; and where it is written."""

    value: str
    place: Place


Wishes = dict[str, Wish]


def plan_values(plan: str, library: Library, problems: list[Problem]) -> Wishes:
    """The values of a plan, by its id or from a YAML file. Adds what is wrong to `problems`."""
    if plan in library.plans:
        return {name: Wish(value, Place(f"plan {plan}, {name}")) for name, value in library.plans[plan].values.items()}
    if Path(plan).is_file():
        return _read_plan(Path(plan), problems)
    hint = did_you_mean(plan, library.plans, f"the plans are {', '.join(library.plans)}; or name a file")
    problems.append(Problem(Place("--plan"), f"no plan and no file {as_shown(plan)}", hint))
    return {}


def changed_values(wanted: Sequence[str], problems: list[Problem]) -> Wishes:
    """From `ID=VALUE` texts; of two for the same id the later one counts. Adds what is wrong to `problems`."""
    wishes: Wishes = {}
    for text in wanted:
        name, _, value = (part.strip() for part in text.partition("="))
        if name and value:
            wishes[name] = Wish(value, Place(f"--set {name}"))
        else:
            hint = "write, for example, `--set altitude=1500m`"
            problems.append(Problem(Place("--set"), f"{as_shown(text)} is not ID=VALUE", hint))
    return wishes


def _read_plan(path: Path, problems: list[Problem]) -> Wishes:
    """A file of `id: value` lines, or of a `values:` mapping as plans in content have it."""
    file = shown_path(path)
    try:
        tree = compose(read_text(path), file, "farm")
    except ProblemsFound as found:
        problems.extend(found.problems)
        return {}
    values = (tree.child("values") or tree) if tree else None
    if values is None or not isinstance(values.value, dict):
        problems.append(Problem(Place(file), "holds no values", "write one a line: `altitude: 1500 m`"))
        return {}
    return {name: wish for name, node in values.value.items() if (wish := _wish(name, node, problems))}


def _wish(name: str, node: Node, problems: list[Problem]) -> Wish | None:
    if isinstance(node.value, str | int | float) and not isinstance(node.value, bool):
        return Wish(str(node.value), node.place)
    hint = f"write `{name}:` and one value behind it"
    problems.append(Problem(node.place, f"the value of `{name}` is not a plain text or number", hint))
    return None
