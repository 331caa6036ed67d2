"""Tags for tubs and bottles: what is inside, how strong, made when."""

from __future__ import annotations

from generator.model.paper import Paper
from generator.papers.data import Data
from generator.papers.wording import Wording


def tags(paper: Paper, say: Wording) -> Data:
    """The data of a sheet of tags."""
    return {
        "intro": say.runs(paper.intro),
        "tags": [
            {
                "title": say.text(tag.title),
                "large": say.large(tag.number) if tag.number else [],
                "second": say.value(tag.number, "second") if tag.number else "",
                "lines": [say.runs(line) for line in tag.lines],
                "blanks": [say.text(blank) for blank in tag.blanks],
            }
            for tag in paper.tags.values()
        ],
    }
