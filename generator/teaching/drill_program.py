"""What the phone asks: `phone/drills.js` with every question, and their drawings in a file of their own."""

from __future__ import annotations

import json
from typing import Any

from generator.computing.phone_formulas import MADE, RUNTIME
from generator.formula import Node, to_javascript
from generator.model.teaching import Answer, Drill
from generator.teaching.drill_bounds import bounds
from generator.teaching.drill_formulas import LinkedDrill, link_drills
from generator.teaching.written import address_of, parts_of
from generator.telling.drawings import Drawings
from generator.telling.edition import Edition
from generator.telling.figures import Figures

FILE = "phone/drills.js"
DRAWINGS = "phone/drill_drawings.js"
_AS_REFERENCES = str.maketrans({sign: f"&#{ord(sign)};" for sign in "\\`$"})


def drill_program(edition: Edition, figures: Figures) -> dict[str, str]:
    """The files by path, in the edition's language; places for numbers stay in the sentences."""
    linked, _ = link_drills(edition.workbook)
    drills = edition.library.drills
    asked = "".join(f"  {name}: {_drill(edition, drill, linked[name])},\n" for name, drill in drills.items())
    shown = sorted({drill.picture for drill in drills.values() if drill.picture})
    drawings = Drawings(edition, figures)
    drawn = {name: str(drawings.for_page(name)) for name in shown}
    measures = _json(_measures(edition))
    fields = ",".join(f"{name}:{in_backquotes(drawing)}" for name, drawing in drawn.items())
    return {
        FILE: f"{MADE}{RUNTIME}export const drills = {{\n{asked}}};\nexport const drillMeasures = {measures};\n",
        DRAWINGS: f"export const drawings = {{{fields}}};\n",
    }


def _drill(edition: Edition, drill: Drill, linked: LinkedDrill) -> str:
    """One question as an object; formulas are functions of the day's values and of what was drawn."""
    library, say = edition.library, edition.translate
    varied, drawn = bounds(edition.workbook, drill)
    part = parts_of(library, drill.written)[drill.written.id]
    told: dict[str, Any] = {
        "asks": say(drill.asks),
        "why": say(drill.why),
        "picture": drill.picture,
        "procedure": drill.written.procedure,
        "part": f"{drill.written.part}-{drill.written.id}",
        "address": address_of(drill.written),
        "title": say(library.procedures[drill.written.procedure].title),
        "sources": [library.sources[each.id].title for each in part.source if each.id],
        "vary": varied,
        "draws": {name: [draw.measure, *drawn[name]] for name, draw in drill.draws.items()},
        "arrange": [
            [step, say(library.procedures[drill.written.procedure].steps[step].action)] for step in drill.arrange
        ],
    }
    fields = [f"{key}: {_json(value)}" for key, value in told.items() if value]
    works = [
        f"{name}: [{_json(drill.works[name].measure)}, {_function(edition, tree)}]"
        for name, tree in linked.works.items()
    ]
    answers = [f"{name}: {_answer(edition, answer, linked.whens.get(name))}" for name, answer in drill.answers.items()]
    fields += [f"works: {{{', '.join(works)}}}"] if works else []
    fields += [f"answers: {{{', '.join(answers)}}}"] if answers else []
    return "{" + ", ".join(fields) + "}"


def _answer(edition: Edition, answer: Answer, when: Node | None) -> str:
    say = edition.translate
    told = {"says": say(answer.says), "why": say(answer.why) if answer.why else "", "right": answer.right}
    fields = [f"{key}: {_json(value)}" for key, value in told.items() if value]
    fields += [f"when: {_function(edition, when)}"] if when else []
    return "{" + ", ".join(fields) + "}"


def _function(edition: Edition, tree: Node) -> str:
    return f"(v) => {to_javascript(tree, edition.workbook.book)}"


def _measures(edition: Edition) -> dict[str, Any]:
    """Measures of numbers that only drills know."""
    drills = edition.library.drills.values()
    used = {draw.measure for drill in drills for draw in drill.draws.values()}
    used |= {worked.measure for drill in drills for worked in drill.works.values()}
    shown = {"unit", "point", "form", "us", "metric"}
    return {name: edition.library.measures[name].model_dump(include=shown) for name in sorted(used)}


def in_backquotes(drawn: str) -> str:
    """A drawing as it stands in pages too, letter by letter, so that both pack well together."""
    return f"`{drawn.translate(_AS_REFERENCES)}`"


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
