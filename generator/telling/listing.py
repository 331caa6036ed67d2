"""Papers as the page of papers lists them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

SIZES = ("us-letter", "a4")
"""Sizes of paper; the first is the farm's where it thinks in US units."""


@dataclass(frozen=True)
class Listed:
    """Where the files of a paper lie below the site, and the code that tells an old print from a new one."""

    id: str
    title: str
    group: str
    code: str
    files: Mapping[str, str]
    """The PDF by size of paper."""
    picture: str
    pages: Mapping[str, int]
    """On which page of its pack it begins, by size of paper."""


def packs(language: str) -> dict[str, str]:
    """The file with all papers of a language, by size of paper."""
    return {size: f"papers/{language}/{size}/pack.pdf" for size in SIZES}


def usual_size(first_units: str) -> str:
    """The size of paper where these units are usual."""
    return SIZES[0] if first_units == "us" else SIZES[1]


def by_group(papers: Iterable[Listed]) -> dict[str, list[Listed]]:
    """Papers under their headings, both in the order of the list."""
    groups: dict[str, list[Listed]] = {}
    for paper in papers:
        groups.setdefault(paper.group, []).append(paper)
    return groups


def offer(papers: Iterable[Listed], language: str, first_units: str) -> dict[str, object]:
    """What the page of papers is made from."""
    return {"groups": by_group(papers), "packs": packs(language), "usual": usual_size(first_units)}
