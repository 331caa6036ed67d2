"""The board for the whole crew: the day by the clock, who stands where, when to stop, whom to call."""

from __future__ import annotations

import math

from generator.model.paper import DayBoard, Span
from generator.papers.data import Data
from generator.papers.emergency import calls
from generator.papers.wording import Wording

HOUR = 3600


def board(day: DayBoard, say: Wording) -> Data:
    """The data of a board, its bars in the order of the clock. A time that is refused leaves its bar out."""
    spans = sorted((made for span in day.spans.values() if (made := _span(span, say))), key=lambda span: span["from"])
    stands = day.stands.values()
    crew = _crew(say, [stand.people for stand in stands])
    return {
        "subtitle": say.edition.plan,
        "moments": _moments(day, say),
        "spans": spans,
        "from": math.floor(min((span["from"] for span in spans), default=0) / HOUR) * HOUR,
        "to": math.ceil(max((span["to"] for span in spans), default=HOUR) / HOUR) * HOUR,
        "stands": [
            {"title": say.text(stand.title), "watch": say.runs(stand.watch), "people": people}
            for stand, people in zip(stands, crew, strict=True)
        ],
        "stops": [say.runs(stop) for stop in day.stops],
        "stop_word": say.word("signal_stop").upper(),
        "calls": calls(say),
        "address": say.edition.library.this_farm.yard_address,
        "words": {
            name: say.word(f"paper_{name}") for name in ("day", "places", "stop_line", "call", "we_are_at", "waiting")
        },
    }


def _moments(day: DayBoard, say: Wording) -> list[Data]:
    """In the order of the clock; what is refused, or not of the clock, stays behind at its place in content."""
    values = {**say.edition.settings, **say.edition.day.values}
    times = sorted(day.moments, key=lambda name: value if isinstance(value := values.get(name), float) else math.inf)
    return [{"title": say.text(day.moments[name]), "value": say.value(name)} for name in times]


def _span(span: Span, say: Wording) -> Data | None:
    values = say.edition.day.values
    begins, ends = (values.get(name, say.edition.settings.get(name)) for name in (span.begins, span.ends))
    if not isinstance(begins, float) or not isinstance(ends, float) or ends < begins:
        return None
    times = [say.value(name) for name in (span.begins, span.ends)]
    return {"title": say.text(span.title), "from": begins, "to": ends, "times": times, "waiting": span.waiting}


def _crew(say: Wording, counts: list[str]) -> list[str]:
    """Names from the farm's list, in order; no names where places are shared, names too few, or a number is refused."""
    values = {**say.edition.settings, **say.edition.day.values}
    wanted = [float(values[name]) for name in counts if name in values]
    names = list(say.edition.library.this_farm.crew)
    if len(wanted) < len(counts) or any(number % 1 for number in wanted) or sum(wanted) > len(names):
        return ["" for _ in counts]
    ends = [int(sum(wanted[: place + 1])) for place in range(len(wanted))]
    return [", ".join(names[end - int(number) : end]) for end, number in zip(ends, wanted, strict=True)]
