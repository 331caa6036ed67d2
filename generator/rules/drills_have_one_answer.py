"""Two right answers teach nothing, and wrong ones that read alike give the right one away."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from generator.model.teaching import Draw, Drill, Worked
from generator.rules.inspection import Finding, Inspection
from generator.teaching.drill_bounds import bounds, corners
from generator.teaching.drill_formulas import LinkedDrill, link_drills, needed, right_answers, work_out
from generator.units import UnitFault
from generator.units.showing import show

FEWEST = 3
_NUMBER = re.compile(r"\{([a-z][a-z0-9_]*)(?: first)?\}")
Values = Mapping[str, float | str]


def drills_have_one_answer(inspection: Inspection) -> Iterator[Finding]:
    """Wherever its numbers fall, one answer of three or more is right, no two read alike, and wrong ones say why."""
    linked, flaws = link_drills(inspection.workbook)
    broken = {flaw.name for flaw in flaws}
    for name, drill in inspection.library.drills.items():
        if drill.answers and name not in broken:
            yield from _too_few_or_unexplained(name, drill)
            try:
                yield from _at_corners(inspection, name, drill, linked[name])
            except UnitFault:
                continue  # reported where bounds are read


def _too_few_or_unexplained(name: str, drill: Drill) -> Iterator[Finding]:
    if len(drill.answers) < FEWEST:
        yield Finding("drills", name, ("answers",), "too few answers", f"give at least {FEWEST}")
    for key, answer in drill.answers.items():
        if not answer.right and not answer.why:
            hint = "say in `why` what makes it look right"
            yield Finding("drills", name, ("answers", key), f"nothing is said about the wrong answer `{key}`", hint)


def _at_corners(inspection: Inspection, name: str, drill: Drill, linked: LinkedDrill) -> Iterator[Finding]:
    workbook = inspection.workbook
    said = frozenset(found for answer in drill.answers.values() for found in _NUMBER.findall(answer.says))
    wanted = needed(workbook, linked, said)
    for changes, drawn in corners(*bounds(workbook, drill)):
        settings = workbook.settler.settle({}, changes)  # under a plan that gives no one answer the phone does not ask
        values = work_out(workbook, linked, {**workbook.compute(settings, wanted).values, **drawn})
        where = ", ".join(f"{key} {_shown(inspection, drill, key, values)}" for key in (*changes, *drawn))
        at = f" at {where}" if where else ""
        right = right_answers(workbook, drill, linked, values)
        if len(right) != 1:
            fault = f"{len(right)} right answers{at}"
            yield Finding("drills", name, ("answers",), fault, "exactly one must be right wherever the numbers fall")
            return
        texts = [_filled(inspection, drill, answer.says, values) for answer in drill.answers.values()]
        alike = next((text for text in texts if texts.count(text) > 1), None)
        if alike is not None:
            fault = f"two answers read “{alike}”{at}"
            yield Finding("drills", name, ("answers",), fault, "let them differ, or narrow what is drawn")
            return


def _filled(inspection: Inspection, drill: Drill, text: str, values: Values) -> str:
    return _NUMBER.sub(lambda place: _shown(inspection, drill, place[1], values), text)


def _shown(inspection: Inspection, drill: Drill, name: str, values: Values) -> str:
    value, workbook = values.get(name), inspection.workbook
    if not isinstance(value, int | float):
        return str(value)
    first, item = inspection.library.this_farm.first_units, workbook.items.get(name)
    if item is not None:
        return show(value, item.measure, first, workbook.book, item.quantity.digits)
    own: Draw | Worked = drill.draws[name] if name in drill.draws else drill.works[name]
    return show(value, inspection.library.measures[own.measure], first, workbook.book)
