"""Cards of half a page, two on a sheet to cut apart."""

from __future__ import annotations

from generator.model.paper import Paper
from generator.papers.data import Data
from generator.papers.station import Stations
from generator.papers.wording import Wording


def halves(paper: Paper, say: Wording, stations: Stations) -> Data:
    """The data of all pairs."""
    procedures = say.edition.library.procedures
    cards = [stations.short(name, procedures[name]) for name in paper.halves]
    return {"cards": cards, "stop_word": say.word("signal_stop").upper()}
