"""The card that hangs at a station, and the same in short for half a page."""

from __future__ import annotations

from generator.model.procedure import SIGNALS, Caution, KeyPoint, Procedure, Step
from generator.papers.data import Data
from generator.papers.paper import Sheet
from generator.papers.wording import Wording
from generator.telling import addresses
from generator.telling.drawings import Drawings
from generator.units.writing import NO_BREAK

MOST_TARGETS = 4


class Stations:
    """Makes cards from procedures."""

    def __init__(self, wording: Wording, drawings: Drawings, numbers: dict[str, int]) -> None:
        self._say = wording
        self._drawings = drawings
        self._numbers = numbers

    def card(self, name: str, procedure: Procedure, group: str) -> Sheet:
        """The card of a procedure, front and back."""
        say = self._say
        data = {
            **self.short(name, procedure),
            "good": say.runs(procedure.good),
            "code_address": say.edition.library.this_farm.site_address + addresses.procedure(name),
            "code_words": say.word("paper_code_picture"),
            "tell": "; ".join(each_once([say.text(stop.tell) for stop in procedure.stops.values() if stop.tell])),
            "faults": [
                {"sign": say.runs(fault.sign), "cause": say.runs(fault.cause), "remedy": say.runs(fault.remedy)}
                for fault in procedure.faults.values()
            ],
            "needs": [self._need(need) for need in procedure.needs],
            "pictures": [self._drawings.for_paper(name) for name in self._pictures(procedure)],
            "sources": self._sources(procedure),
            "words": _words(say),
        }
        return Sheet(f"station_{name}", say.text(procedure.title), group, "station", data)

    def short(self, name: str, procedure: Procedure) -> Data:
        """What half a page has room for; no danger and no stop is ever left out."""
        say = self._say
        return {
            "title": say.text(procedure.title),
            "number": str(self._numbers.get(name, "")),
            "targets": [self._target(target) for target in procedure.targets[:MOST_TARGETS]],
            "cautions": [self.caution(caution) for caution in sorted(procedure.cautions.values(), key=_gravity)],
            "steps": [self._step(step) for step in procedure.steps.values() if say.edition.applies(step)],
            "stops": [
                {"when": say.runs(stop.when), "act": say.runs(stop.act), "tell": say.text(stop.tell)}
                for stop in procedure.stops.values()
            ],
        }

    def caution(self, caution: Caution) -> Data:
        """A caution with its signal word."""
        say = self._say
        word = say.word(f"signal_{caution.signal}")
        return {
            "signal": caution.signal,
            "word": word,
            "hazard": say.runs(caution.hazard),
            "avoid": say.runs(caution.avoid),
        }

    def _target(self, target: str) -> Data:
        second = self._say.value(target, "second")
        return {"title": self._say.title_of(target), "pieces": self._say.large(target), "below": second}

    def _step(self, step: Step) -> Data:
        points = [self._point(point) for point in step.key_points]
        return {"action": self._say.runs(step.action), "points": points, "reason": self._say.runs(step.reason)}

    def _point(self, point: KeyPoint) -> Data:
        return {"point": self._say.runs(point.point), "why": self._say.runs(point.why)}

    def _need(self, need: str) -> str:
        supply = self._say.edition.library.supplies[need]
        title = self._say.text(supply.title)
        return f"{title}{NO_BREAK}{self._say.value(supply.amount)}" if supply.amount else title

    def _pictures(self, procedure: Procedure) -> list[str]:
        steps = (step for step in procedure.steps.values() if self._say.edition.applies(step))
        return list(dict.fromkeys(step.picture for step in steps if step.picture))

    def _sources(self, procedure: Procedure) -> list[str]:
        parts = (procedure.cautions, procedure.steps, procedure.stops, procedure.faults)
        cited = [citation.id for part in parts for entry in part.values() for citation in entry.source if citation.id]
        return list(dict.fromkeys(self._say.edition.library.sources[source].title for source in cited))


def each_once(told: list[str]) -> list[str]:
    """Without those whom another line names as well: `Crew lead` beside `A vet, then crew lead`."""
    return [who for who in dict.fromkeys(told) if not any(_names_more(other, who) for other in told)]


def _names_more(other: str, who: str) -> bool:
    longer, part = other.casefold(), who.casefold()
    return longer.startswith(f"{part},") or longer.endswith(f" then {part}")


def _gravity(caution: Caution) -> int:
    return SIGNALS.index(caution.signal)


def _words(say: Wording) -> Data:
    names = ("back", "likely", "stop_work", "stop_acts", "cautions", "faults", "why", "needs")
    return {
        **{name: say.word(f"paper_{name}") for name in (*names, "sources", "sources_on_page")},
        "stop": say.word("signal_stop").upper(),
        "tell": say.word("procedure_tell"),
        "fault_columns": [say.word(f"paper_fault_{name}") for name in ("sign", "remedy")],
    }
