"""What happened to the stock, in order: lines of the ledger that speak of one thing are one event."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from operator import attrgetter

from visits.domain.kit.hundredths import in_hundredths
from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.kit.stock_lines import Movement

_IN_ORDER = attrgetter("at", "id")


@dataclass(slots=True)
class StockEvent:
    """`change` at `place`, in hundredths of the unit. A move names its `target`; then `change` is below nought."""

    at: datetime
    id: int
    kind: MovementKind
    place: int
    change: int
    lot: int | None
    cost: int | None
    source: str
    target: int | None = None

    @property
    def turn(self) -> tuple[datetime, bool, int]:
        """Its place in the order. A count speaks of all that is dated up to its moment, so it comes last in it."""
        return self.at, self.kind is MovementKind.COUNTED, self.id


_Key = tuple[object, ...]


def stock_events(movements: Iterable[Movement]) -> list[StockEvent]:
    """The events that move something, in the order of (at, id).

    - A use and its corrections (same source, place and moment: a correction is dated as what it corrects) are their
      sum, at the first of the lines. So what was taken back was never short, and costs nothing.
    - All that counts of one place and moment found is their sum.
    - The two legs of a move are one event. Legs that do not fit are as if a count had found or missed so much.
    """
    events: dict[_Key, StockEvent] = {}
    moves: dict[_Key, list[StockEvent]] = {}
    for line in sorted(movements, key=_IN_ORDER):
        event, key = _event(line), _key(line)
        if line.kind is MovementKind.MOVED:
            moves.setdefault(key, []).append(event)
        elif key in events:
            events[key].change += event.change
        else:
            events[key] = event
    found = [event for event in events.values() if event.change]
    for legs in moves.values():
        found += _joined(legs)
    found.sort(key=attrgetter("turn"))
    return found


def _event(line: Movement) -> StockEvent:
    cost = None if line.cost is None else in_hundredths(line.cost)
    change = in_hundredths(line.quantity)
    return StockEvent(line.at, line.id, line.kind, line.place, change, line.lot, cost, line.source)


def _key(line: Movement) -> _Key:
    if line.kind is MovementKind.USED and line.source:
        return line.source, line.place, line.at
    if line.kind is MovementKind.COUNTED:
        return "", line.place, line.at
    if line.kind is MovementKind.MOVED:
        return line.source, line.lot, line.at
    return (line.id,)


def _joined(legs: Sequence[StockEvent]) -> list[StockEvent]:
    if len(legs) == 2 and legs[0].change == -legs[1].change:
        out, into = sorted(legs, key=attrgetter("change"))
        out.target, out.id = into.place, legs[0].id
        return [out]
    for leg in legs:
        leg.kind = MovementKind.COUNTED
    return list(legs)
