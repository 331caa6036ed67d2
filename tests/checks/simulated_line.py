"""The line told event by event, with people, cones, scalder, plucker and tables: our formulas know none of it."""

from __future__ import annotations

import math
from collections.abc import Generator
from dataclasses import dataclass
from typing import Any

import simpy
from simpy.resources.resource import Request

Steps = Generator[simpy.Event, Any, None]


@dataclass(frozen=True)
class Line:
    """People, places and times in seconds; a dunk and a plucker load take birds in batches."""

    birds: int
    cones: int
    scald_batch: int
    pluck_batch: int
    helpers_kill: int
    helpers_scald_pluck: int
    helpers_evisceration: int
    helpers_wash: int
    evisceration_places: int
    wash_places: int
    kill_handling_time: float
    bleed_time: float
    scald_time: float
    scald_handling_time: float
    pluck_time: float
    pluck_handling_time: float
    finishing_time: float
    evisceration_time: float
    wash_time: float


class SimulatedLine:
    """Runs one day. Tables between stations hold what waits; a bled bird hangs in its cone until its dunk is loaded."""

    def __init__(self, line: Line) -> None:
        self.line = line
        self.load = min(line.scald_batch, line.cones)
        self.clock = simpy.Environment()
        self.killers = simpy.Resource(self.clock, line.helpers_kill)
        self.cones = simpy.Container(self.clock, line.cones, init=line.cones)
        self.bled = simpy.Store(self.clock)
        self.scalder = simpy.Resource(self.clock, 1)
        self.plucker = simpy.Resource(self.clock, 1)
        self.hands = simpy.PriorityResource(self.clock, line.helpers_scald_pluck)
        self.table = simpy.Resource(self.clock, min(line.helpers_evisceration, line.evisceration_places))
        self.sink = simpy.Resource(self.clock, min(line.helpers_wash, line.wash_places))
        self.cuts: list[float] = []
        self.finished: list[float] = []

    def run(self) -> SimulatedLine:
        """Every bird from cone to tub."""
        for _ in range(self.line.birds):
            self.clock.process(self._kill())
        self.clock.process(self._dunks())
        self.clock.run()
        assert len(self.finished) == self.line.birds
        return self

    def _kill(self) -> Steps:
        with self.killers.request() as hands:
            yield hands
            yield self.cones.get(1)
            yield self.clock.timeout(self.line.kill_handling_time)
            self.cuts.append(self.clock.now)
        yield self.clock.timeout(self.line.bleed_time)
        yield self.bled.put(self.clock.now)

    def _dunks(self) -> Steps:
        left = self.line.birds
        while left:
            batch = min(self.load, left)
            for _ in range(batch):
                yield self.bled.get()
            place = self.scalder.request()
            yield place
            hands = self.hands.request(priority=1)
            yield hands
            yield self.cones.put(batch)
            self.clock.process(self._dunk(batch, place, hands))
            left -= batch

    def _dunk(self, batch: int, place: Request, hands: Request) -> Steps:
        yield self.clock.timeout(self.line.scald_handling_time + self.line.scald_time)
        self.hands.release(hands)
        self.scalder.release(place)
        with self.plucker.request() as drum:
            yield drum
            for _ in range(math.ceil(batch / self.line.pluck_batch)):
                with self.hands.request(priority=0) as free_hands:
                    yield free_hands
                    yield self.clock.timeout(self.line.pluck_handling_time + self.line.pluck_time)
        for _ in range(batch):
            self.clock.process(self._finish())

    def _finish(self) -> Steps:
        with self.table.request() as place:
            yield place
            yield self.clock.timeout(self.line.finishing_time + self.line.evisceration_time)
        with self.sink.request() as place:
            yield place
            yield self.clock.timeout(self.line.wash_time)
        self.finished.append(self.clock.now)
