"""Ways in: one for each place of the line, and as long as they say."""

from __future__ import annotations

import pytest

from generator.model.library import Library
from generator.model.teaching import Path
from tests.product import product_library

PATHS = product_library().paths
WORDS_A_MINUTE = 130
"""Slow reading aloud."""
SECONDS_A_QUESTION = 30


def minutes(library: Library, path: Path) -> float:
    texts, drills = list[str](), 0
    for leg in path.legs.values():
        drills += len(leg.drills)
        texts += [leg.says, *(library.terms[term].says for term in leg.terms)]
        if leg.procedure:
            procedure = library.procedures[leg.procedure]
            texts += [f"{procedure.cautions[key].hazard} {procedure.cautions[key].avoid}" for key in leg.cautions]
            texts += [f"{procedure.stops[key].when} {procedure.stops[key].act}" for key in leg.stops]
            steps = [procedure.steps[key] for key in leg.steps]
            texts += [
                text for step in steps for text in (step.action, *(f"{k.point} {k.why}" for k in step.key_points))
            ]
    return sum(len(text.split()) for text in texts) / WORDS_A_MINUTE + drills * SECONDS_A_QUESTION / 60


@pytest.mark.parametrize("name", PATHS)
def test_a_path_takes_about_as_long_as_it_says(name: str, library: Library) -> None:
    assert minutes(library, library.paths[name]) == pytest.approx(library.paths[name].minutes, rel=0.35)


def test_every_place_of_the_line_has_a_way_in(library: Library) -> None:
    places = {place.procedure for crew in library.crews.values() for place in crew.places.values()}
    assert places <= {path.place for path in library.paths.values()}


def test_what_a_place_asks_for_is_on_its_path(library: Library) -> None:
    for path in library.paths.values():
        asked = {name for name, skill in library.skills.items() if path.place in skill.places}
        assert asked <= set(path.skills), path.title


def test_every_skill_is_reached_by_a_path(library: Library) -> None:
    assert set(library.skills) == {skill for path in library.paths.values() for skill in path.skills}
