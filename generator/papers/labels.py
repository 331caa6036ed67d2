"""Labels for one kind of stock, with what the plan's rules ask for."""

from __future__ import annotations

from generator.model.paper import Labels, Paper, Stock
from generator.papers.data import Data
from generator.papers.wording import Wording
from generator.telling.drawings import Drawings


def labels(paper: Paper, wanted: Labels, stock: Stock, say: Wording) -> Data:
    """The data of a sheet. Lines for other rules are left out; the farm's name and place come from the farm."""
    farm = say.edition.library.this_farm
    drawings = Drawings(say.edition, say.figures)
    lines = [
        {"text": say.runs(line.says), "size": line.size, "sign": drawings.for_paper(line.sign) if line.sign else None}
        for line in wanted.lines.values()
        if say.edition.matches(line.only)
    ]
    return {
        "stock": stock.model_dump(exclude={"title", "paper", "apart"}),
        "apart": stock.apart and any(line["size"] == "heading" for line in lines),
        "stock_title": say.text(stock.title),
        "maker": [part for part in (farm.name, farm.place) if part],
        "lines": lines,
        "blanks": [say.text(blank) for blank in wanted.blanks.values()],
        "check": say.runs(wanted.check),
        "both": say.runs(wanted.both),
        "notice": say.word("signal_notice"),
        "intro": say.runs(paper.intro),
        "rules": say.word("paper_scale_check"),
    }
