"""One round seen from each of its stops towards one end: what is still to come, as a function of time.

The same arithmetic serves both ends. Forward: ready at a stop -> earliest return. Backward, with the clock turned
round (every instant negated): done with a stop -> latest leaving. See `order_figures`.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from visits.domain.planning.offers.pieces import Pieces, chained, meal_on_drive, up_to, visit

Meal = tuple[int, int, int]
"""Length, earliest and latest begin."""


class LaneStop(NamedTuple):
    """A job on the lane: the starts it allows, how long it takes, and the drive behind it."""

    starts: Sequence[tuple[int, int]]
    length: int
    drive: int


class LaneEnd(NamedTuple):
    """The base at the end: the last moment to be there with no meal to come, and with the meal still to come."""

    fed: int
    hungry: int


@dataclass(frozen=True)
class Lane:
    """What lies ahead from each of `stops`, the last one driving to the base: at index k from stop k on; the last
    index is the base itself. No pieces: it cannot be done from there."""

    stops: Sequence[LaneStop]
    end: LaneEnd
    meal: Meal | None

    @cached_property
    def fed(self) -> Sequence[Pieces]:
        """Where no meal is needed any more."""
        ahead: list[Pieces] = [up_to(self.end.fed)]
        for stop in reversed(self.stops):
            ahead.append(chained(ahead[-1], _through(stop)))
        return ahead[::-1]

    # Apart from `fed`, because most rounds are seen to have no room before anybody asks for the meal.
    @cached_property
    def hungry(self) -> Sequence[Sequence[Pieces]]:
        """The ways to have the meal from there on, or to do without by being at the base in time."""
        if self.meal is None:
            return [[] for _ in range(len(self.stops) + 1)]
        ahead: list[list[Pieces]] = [[up_to(self.end.hungry)]]
        for at in reversed(range(len(self.stops))):
            stop, through = self.stops[at], _through(self.stops[at])
            eaten = meal_on_drive(stop.drive, self.meal, to_base=at == len(self.stops) - 1)
            now = chained(chained(self.fed[at + 1], eaten), visit(stop.starts, stop.length))
            ways = [*(chained(way, through) for way in ahead[-1]), now]
            ahead.append([way for way in ways if way])
        return ahead[::-1]

    def last_ready(self, stop: int) -> int | None:
        """The last moment to be ready at that stop, meal or not; None where it is never in time."""
        ahead = self.fed[stop]
        return ahead[-1].last if ahead else None


def _through(stop: LaneStop) -> Pieces:
    return visit(stop.starts, stop.length + stop.drive)
