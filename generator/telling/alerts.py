"""What speaks against a plan: the stops and warnings that its numbers raise, and numbers that are refused."""

from __future__ import annotations

from collections.abc import Iterator

from generator.model.plan import Watch
from generator.telling.edition import Edition
from generator.telling.figures import Figures
from generator.telling.sentences import Sentences


def stops(edition: Edition) -> list[str]:
    """Sentences of the watches because of which the day may not begin as it is planned, with what to do."""
    return [sentence for watch, sentence in _raised(edition) if watch.stop]


def alerts(edition: Edition) -> Iterator[str]:
    """A line for everything that the plan raises, the worst first, then for each number that is refused."""
    for watch, sentence in _raised(edition):
        yield f"{'STOP' if watch.stop else watch.signal.upper()}: {sentence}"
    for name in edition.day.refused:
        yield f"REFUSED: {name}: {refusal(edition, name)}"


def refusal(edition: Edition, name: str) -> str:
    """Why a number is refused."""
    return Sentences(edition, Figures(edition)).plain(edition.day.refused[name].sentence)


def _raised(edition: Edition) -> Iterator[tuple[Watch, str]]:
    sentences = Sentences(edition, Figures(edition))
    for name in edition.day.alerts:
        watch = edition.library.watches[name]
        yield watch, f"{sentences.plain(watch.says)} {sentences.plain(watch.cure)}"
