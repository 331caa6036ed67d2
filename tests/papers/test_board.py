"""The board of the crew under plans that refuse one of its numbers."""

from dataclasses import replace

from generator.papers.board import board
from generator.papers.wording import Wording
from generator.telling.edition import Edition


def test_places_get_no_names_where_the_plan_refuses_how_many_stand_there(edition: Edition, wording: Wording) -> None:
    (paper,) = [paper for paper in edition.library.papers.values() if paper.board]
    assert paper.board
    counts = [stand.people for stand in paper.board.stands.values()]
    assert all(stand["people"] for stand in board(paper.board, wording)["stands"])
    day = replace(edition.day, values={name: value for name, value in edition.day.values.items() if name != counts[0]})
    settings = {name: value for name, value in edition.settings.items() if name != counts[0]}
    stands = board(paper.board, Wording(replace(edition, day=day, settings=settings)))["stands"]
    assert [stand["people"] for stand in stands] == ["" for _ in counts]
