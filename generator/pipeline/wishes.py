"""The plan and the changed values that a person names for one run."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from generator.model.library import Library
from generator.problems import Place, Problem, ProblemsFound, as_shown, did_you_mean, stop_at
from generator.reading.composer import compose
from generator.reading.text import read_text

Values = Mapping[str, str]
"""Quantity or choice by id, as a person writes it: `85degF`, `stirred`."""


def plan_values(wanted: str | None, library: Library) -> Values:
    """The values of a plan by id or from a YAML file; of the farm's own plan when none is wanted."""
    plan = library.this_farm.plan if wanted is None else wanted
    if plan in library.plans:
        return library.plans[plan].values
    if Path(plan).is_file():
        return _read_plan(Path(plan))
    hint = did_you_mean(plan, library.plans, f"the plans are {', '.join(library.plans)}; or name a file")
    raise ProblemsFound([Problem(Place("--plan"), f"no plan and no file {as_shown(plan)}", hint)])


def changed_values(wanted: Sequence[str]) -> Values:
    """From `ID=VALUE` texts; of two for the same id the later one counts."""
    parts = [text.partition("=") for text in wanted]
    stop_at(
        [
            Problem(Place("--set"), f"{as_shown(text)} is not ID=VALUE", "write, for example, `--set altitude=1500m`")
            for text, (name, sign, value) in zip(wanted, parts, strict=True)
            if not (name.strip() and sign and value.strip())
        ]
    )
    return {name.strip(): value.strip() for name, _, value in parts}


def _read_plan(path: Path) -> Values:
    """A file of `id: value` lines, or of a `values:` mapping as plans in content have it."""
    tree = compose(read_text(path), str(path), "farm")
    values = tree.child("values") or tree if tree else None
    if values is None or not isinstance(values.value, dict):
        raise ProblemsFound([Problem(Place(str(path)), "holds no values", "write one a line: `altitude: 1500 m`")])
    problems = [
        Problem(node.place, f"the value of `{name}` is not a plain text or number", "write, for example, `1500 m`")
        for name, node in values.value.items()
        if isinstance(node.value, list | dict | bool) or node.value is None
    ]
    stop_at(problems)
    return {name: str(node.value) for name, node in values.value.items()}
