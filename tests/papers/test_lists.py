"""The printed list of things to bring leaves out nothing that a procedure needs."""

from generator.papers.forms import bring_list
from generator.papers.wording import Wording
from generator.telling.edition import Edition


def test_every_need_of_every_procedure_is_on_the_list(edition: Edition, wording: Wording) -> None:
    library = edition.library
    (paper,) = [paper for paper in library.papers.values() if paper.supplies]
    rows = [row for section in bring_list(paper, wording)["sections"] for row in section["rows"]]
    listed = [row[1] for row in rows]
    needs = {need for procedure in library.procedures.values() for need in procedure.needs}
    assert len(needs) > 50
    assert [need for need in sorted(needs) if wording.runs(library.supplies[need].title) not in listed] == []
