"""What is known of the work of blades, and which of them were in hand at which cow.

The set in hand at a cow is the one said last on her visit, at or before the moment she was noted. Before anything was
said on the visit, what was said last on another visit of the same van still holds ("default the last"). Each turn says
the whole set, so a turn without a blade means: none in hand. A visit without a van has nothing to fall back on.
"""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

NOTHING: frozenset[int] = frozenset()


@dataclass(frozen=True)
class CowCut:
    """A cow that was cut: on which visit of which van, when she was noted (aware), how long she stood in the crush."""

    visit: int
    van: int | None
    at: datetime
    seconds: int | None = None


@dataclass(frozen=True)
class Turn:
    """A word at the crush: the blades in hand from now on, those that went dull, those that cracked or chipped."""

    visit: int
    van: int | None
    at: datetime
    in_hand: frozenset[int] = NOTHING
    went_dull: frozenset[int] = NOTHING
    cracked: frozenset[int] = NOTHING
    chipped: frozenset[int] = NOTHING


def cows_by_blade(cows: Iterable[CowCut], turns: Iterable[Turn]) -> dict[int, list[CowCut]]:
    """Blade -> the cows it was in hand at, in order of time. A blade that was in hand at none is left out."""
    said = _Said(turns)
    found: defaultdict[int, list[CowCut]] = defaultdict(list)
    for cow in sorted(cows, key=lambda cow: cow.at):
        for blade in said.in_hand_at(cow):
            found[blade].append(cow)
    return dict(found)


def last_in_hand(turns: Iterable[Turn], van: int, at: datetime) -> frozenset[int]:
    """What was in hand last on that van's visits up to that moment."""
    return _Said(turns).of_van(van, at)


class _Said:
    """The turns by visit and by van, to be looked up by moment."""

    def __init__(self, turns: Iterable[Turn]) -> None:
        by_visit: defaultdict[int, list[Turn]] = defaultdict(list)
        by_van: defaultdict[int, list[Turn]] = defaultdict(list)
        # Two phones may have said different things at one moment: then the order must not hang on who was heard first.
        for turn in sorted(turns, key=lambda turn: (turn.at, turn.visit, sorted(turn.in_hand))):
            by_visit[turn.visit].append(turn)
            if turn.van is not None:
                by_van[turn.van].append(turn)
        self._by_visit = {key: _Told(rows) for key, rows in by_visit.items()}
        self._by_van = {key: _Told(rows) for key, rows in by_van.items()}

    def in_hand_at(self, cow: CowCut) -> frozenset[int]:
        own = self._by_visit.get(cow.visit)
        turn = own.last_until(cow.at) if own else None
        if turn is not None:
            return turn.in_hand
        return NOTHING if cow.van is None else self.of_van(cow.van, cow.at)

    def of_van(self, van: int, at: datetime) -> frozenset[int]:
        told = self._by_van.get(van)
        turn = told.last_until(at) if told else None
        return turn.in_hand if turn else NOTHING


class _Told:
    """Turns in order of time."""

    def __init__(self, rows: list[Turn]) -> None:
        self._rows, self._moments = rows, [turn.at for turn in rows]

    def last_until(self, at: datetime) -> Turn | None:
        place = bisect_right(self._moments, at)
        return self._rows[place - 1] if place else None
