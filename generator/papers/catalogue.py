"""Which papers there are, in the order in which they are listed."""

from __future__ import annotations

from collections.abc import Iterator

from generator.model.paper import Paper
from generator.papers.board import board
from generator.papers.data import Data
from generator.papers.emergency import emergency
from generator.papers.forms import bring_list, record, sign_off
from generator.papers.halves import halves
from generator.papers.labels import labels
from generator.papers.paper import Sheet
from generator.papers.station import Stations
from generator.papers.tags import tags
from generator.papers.wording import Wording
from generator.telling.drawings import Drawings
from generator.telling.phases import numbers, phases


def sheets(say: Wording) -> list[Sheet]:
    """Those of content first, then a card for each procedure. Raises ProblemsFound where words are missing."""
    edition = say.edition
    stations = Stations(say, Drawings(edition, say.figures), numbers(edition))
    ordered = sorted(edition.library.papers.items(), key=lambda item: item[1].order)
    made = [sheet for name, paper in ordered for sheet in _of_content(name, paper, say, stations)]
    for _, phase, members in phases(edition):
        made += [stations.card(name, procedure, say.text(phase.title)) for name, procedure in members]
    say.word.stop_at_missing()
    return made


def _of_content(name: str, paper: Paper, say: Wording, stations: Stations) -> Iterator[Sheet]:
    title, group = say.text(paper.title), say.word("paper_group")
    if paper.labels:
        for key, stock in paper.labels.stocks.items():
            data = labels(paper, paper.labels, stock, say)
            yield Sheet(f"{name}_{key}", f"{title}: {say.text(stock.title)}", group, "labels", data, stock.paper)
    else:
        yield Sheet(name, title, group, *_form(paper, say, stations))


def _form(paper: Paper, say: Wording, stations: Stations) -> tuple[str, Data]:
    if paper.board:
        return "board", board(paper.board, say)
    if paper.sign_off:
        return "form", sign_off(paper, paper.sign_off, say)
    if paper.supplies:
        return "form", bring_list(paper, say)
    if paper.tags:
        return "tags", tags(paper, say)
    if paper.halves:
        return "half", halves(paper, say, stations)
    if paper.emergency:
        return "emergency", emergency(paper, say)
    return "form", record(paper, say)
