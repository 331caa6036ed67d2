"""What programs about teaching read: their words, how a job is taught, what is signed, and what lies on each path."""

from __future__ import annotations

import json
from typing import Any

from generator.model.teaching import Instruction, Path, Skill
from generator.telling.edition import Edition
from generator.telling.words import Words

FILE = "phone/teaching.js"
MARK = "teaching_"
"""Words whose ids begin so are sent to these programs."""


def teaching_program(edition: Edition, words: Words) -> dict[str, str]:
    """The file by its path, in the edition's language."""
    library = edition.library
    instructions = sorted(library.instructions.items(), key=lambda item: item[1].order)
    skills = sorted(library.skills.items(), key=lambda item: item[1].order)
    paths = sorted(library.paths.items(), key=lambda item: item[1].order)
    said = {
        "words": words.beginning(MARK),
        "instructions": {name: _instruction(edition, one) for name, one in instructions},
        "skills": {name: _skill(edition, one) for name, one in skills},
        "paths": {name: _path(edition, one) for name, one in paths},
        "people": list(library.this_farm.crew),
    }
    return {FILE: "".join(f"export const {name} = {_json(value)};\n" for name, value in said.items())}


def _instruction(edition: Edition, instruction: Instruction) -> dict[str, Any]:
    say = edition.translate
    points = {name: say(point) for name, point in instruction.points.items()}
    return {"title": say(instruction.title), "points": points, "steps": instruction.shows_steps}


def _skill(edition: Edition, skill: Skill) -> dict[str, Any]:
    """A skill; `lasts` in seconds, nought for good."""
    say = edition.translate
    seconds = {**edition.settings, **edition.day.values}.get(skill.lasts, 0) if skill.lasts else 0
    return {"title": say(skill.title), "places": list(skill.places), "lasts": seconds}


def _path(edition: Edition, path: Path) -> dict[str, Any]:
    legs = {name: list(leg.drills) for name, leg in path.legs.items()}
    return {"title": edition.translate(path.title), "legs": legs, "place": path.place or ""}


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
