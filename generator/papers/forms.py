"""Sheets with room to write or to tick: the day's record, the list of things to bring, the sign-off of a new hand."""

from __future__ import annotations

from generator.model.paper import Form, Paper, SignOff
from generator.papers.data import Data
from generator.papers.wording import Wording

TICK = "tick"


def record(paper: Paper, say: Wording) -> Data:
    """Blank tables with their limits."""
    return {"intro": say.runs(paper.intro), "sections": [_section(form, say) for form in paper.forms.values()]}


def _section(form: Form, say: Wording) -> Data:
    columns = form.columns.values()
    blank = [""] * len(columns)
    rows = [[say.runs(line), *blank[1:]] for line in form.lines] + [blank] * form.rows
    return _table(
        say.text(form.title),
        say.runs(form.note),
        [say.text(column.title) for column in columns],
        [column.share for column in columns],
        rows,
        height=27,
    )


def _table(title: str, note: object, columns: list[str], shares: list[float], rows: object, height: int) -> Data:
    return {"title": title, "note": note, "columns": columns, "shares": shares, "rows": rows, "height": height}


def bring_list(paper: Paper, say: Wording) -> Data:
    """Everything to bring, by heading, with how much of it the plan wants."""
    library = say.edition.library
    sections = []
    for name, group in sorted(library.groups.items(), key=lambda item: item[1].order):
        rows = [
            [TICK, say.runs(supply.title), say.value(supply.amount) if supply.amount else ""]
            for supply in library.supplies.values()
            if supply.group == name
        ]
        if rows:
            columns = ["", say.text(group.title), say.word("paper_amount")]
            sections.append(_table("", [], columns, [0.45, 4.2, 1.35], rows, height=0))
    return {"intro": say.runs(paper.intro), "sections": sections, "columns": 2}


def sign_off(paper: Paper, wanted: SignOff, say: Wording) -> Data:
    """A row for each key skill and each procedure, a box for each stage of learning it."""
    library = say.edition.library
    stages = [say.text(stage) for stage in wanted.stages.values()]
    columns = [say.word("paper_skill"), *stages]
    skills = sorted(library.skills.values(), key=lambda one: one.order)
    rows = [[say.runs(one.title), *("" for _ in stages)] for one in skills]
    shares = [3.2, *(1.0 for _ in stages)]
    sections = [_table(say.word("paper_key_skills"), [], columns, shares, rows, height=27)] if rows else []
    for phase in wanted.phases:
        found = [one for one in library.procedures.values() if one.phase == phase]
        rows = [[say.runs(one.title), *("" for _ in stages)] for one in sorted(found, key=lambda one: one.order)]
        sections.append(_table(say.text(library.phases[phase].title), [], columns, shares, rows, height=27))
    return {"intro": say.runs(paper.intro), "sections": sections, "name": say.word("paper_name")}
