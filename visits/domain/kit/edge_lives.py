"""The life of each edge: where it began, how it ended, how many cows it cut.

An edge begins when the blade was bought, when it was sharpened, or when somebody said that a worn one was replaced,
that a broken one was put right, or that it is back from grinding, without a sharpening being noted.

How it ended, and what the cows-per-edge curve makes of it:
- it went dull: said at the crush, or noted at the next sharpening ("dull: it dragged"). The event of the curve.
- sharpened though it still cut, or nobody said how it was; chipped or cracked; taken out of use or retired; or it cuts
  to this day. Each tells only that the edge lasted so long: censored. A chip ends an edge for a reason of its own (a
  stone, a fall), not by wear. Kaplan-Meier takes the censored to fare like the rest: where edges are sharpened early
  because they begin to drag, the curve reads a little high, and the page says so.

Cows cut by an edge that had already been said dull are not counted on it. What was counted by hand at the sharpening
goes before the log. An edge is left out of the curve (`tells` is False) when the log does not know its beginning, or
when it ended without a cow on it and nobody counted by hand: then it cut where nobody noted it, or not at all.
"""

from bisect import bisect_left
from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum

from visits.domain.kit.blade_away import Away, away_spans
from visits.domain.kit.blade_kinds import BladeFault, BladeKind, BladeState, EdgeBefore, Hand, SharpenMethod
from visits.domain.kit.blade_life import BladeWord
from visits.domain.kit.edge_log import CowCut, Turn


class EdgeEnd(StrEnum):
    """How an edge ended."""

    WENT_DULL = "went_dull"
    STILL_CUT = "still_cut"
    NOT_SAID = "not_said"
    BROKEN = "broken"
    TAKEN_OUT = "taken_out"
    IN_USE = "in_use"

    @property
    def label(self) -> str:
        return _END_LABELS[self]


@dataclass(frozen=True)
class Sharpened:
    """A sharpening; `cows_by_hand` are those of the edge before it. `method` None: not said."""

    at: datetime
    method: SharpenMethod | None = None
    before: EdgeBefore = EdgeBefore.NOT_SAID
    cows_by_hand: int | None = None


@dataclass(frozen=True)
class BladeLog:
    """All that is known of one blade. `words` are those of persons, `turns` those at the crush that name it.

    `known_since`: the log tells everything of it from this moment on; an edge that began before is not whole.
    `was_used` when it had been used already then: its first edge is not whole either.
    """

    blade: int
    kind: BladeKind
    hand: Hand
    known_since: datetime
    was_used: bool = False
    words: tuple[BladeWord, ...] = ()
    turns: tuple[Turn, ...] = ()
    sharpened: tuple[Sharpened, ...] = ()


@dataclass(frozen=True)
class Edge:
    """One edge. `is_new` when it came with the blade; `method` None: not said, or new."""

    blade: int
    kind: BladeKind
    method: SharpenMethod | None
    is_new: bool
    is_whole: bool
    begun_at: datetime
    ended_at: datetime | None = None
    end: EdgeEnd = EdgeEnd.IN_USE
    cows: int = 0
    by_hand: bool = False

    @property
    def is_dull(self) -> bool:
        """Whether it went dull: the event of the curve."""
        return self.end is EdgeEnd.WENT_DULL

    @property
    def is_over(self) -> bool:
        return self.end is not EdgeEnd.IN_USE

    @property
    def tells(self) -> bool:
        """Whether it says anything of how long an edge lasts."""
        return self.is_whole and (self.cows > 0 or self.by_hand)


def edges_of(log: BladeLog, cows: Sequence[CowCut]) -> tuple[Edge, ...]:
    """The edges of a blade in order of time; the last one is on it now. `cows`: those it was in hand at, in order."""
    away = away_spans(log.words, _moments_back(log))
    moments = [cow.at for cow in cows if not any(span.holds(cow.at) for span in away)]
    done: list[Edge] = []
    edge = Edge(log.blade, log.kind, None, is_new=True, is_whole=not log.was_used, begun_at=log.known_since)
    for mark in _marks(log, away):
        if mark.only_if_broken and edge.end is not EdgeEnd.BROKEN:
            continue
        edge = _ended(edge, mark.at, mark.end, moments)
        if mark.begins:
            done.append(_by_hand(edge, mark.sharpened))
            method = mark.sharpened.method if mark.sharpened else None
            edge = Edge(log.blade, log.kind, method, is_new=mark.is_new, is_whole=True, begun_at=mark.at)
    if away and away[-1].until is None and away[-1].state is not BladeState.AT_GRINDING:
        edge = _ended(edge, away[-1].since, EdgeEnd.TAKEN_OUT, moments)
    return (*done, edge if edge.is_over else _counted(edge, moments))


@dataclass(frozen=True)
class _Mark:
    """Something that ends the edge there is and may begin another; of one moment, what only ends comes first."""

    at: datetime
    end: EdgeEnd
    begins: bool = False
    only_if_broken: bool = False
    is_new: bool = False
    sharpened: Sharpened | None = None


def _marks(log: BladeLog, away: Sequence[Away]) -> list[_Mark]:
    back = {span.until for span in away if span.state is BladeState.AT_GRINDING}
    marks = [
        *(_Mark(one.at, _END_BEFORE[one.before], begins=True, sharpened=one) for one in log.sharpened),
        *_by_turns(log),
        *_by_words(log, back - {one.at for one in log.sharpened}),
    ]
    return sorted(marks, key=lambda mark: (mark.at, mark.begins, mark.sharpened is None))


def _by_turns(log: BladeLog) -> Iterator[_Mark]:
    for turn in log.turns:
        if log.blade in turn.cracked or log.blade in turn.chipped:
            yield _Mark(turn.at, EdgeEnd.BROKEN)
        elif log.blade in turn.went_dull:
            yield _Mark(turn.at, EdgeEnd.WENT_DULL)


def _by_words(log: BladeLog, back_from_grinding: Container[datetime | None]) -> Iterator[_Mark]:
    for word in log.words:
        if word.says is BladeState.OUT_OF_USE and word.fault and word.fault.is_danger:
            yield _Mark(word.at, EdgeEnd.BROKEN)
        elif word.says is BladeState.IN_USE and word.at in back_from_grinding:
            yield _Mark(word.at, EdgeEnd.NOT_SAID, begins=True)
        elif word.says is BladeState.IN_USE and word.fault is BladeFault.WORN:
            yield _Mark(word.at, EdgeEnd.TAKEN_OUT, begins=True, is_new=True)
        elif word.says is BladeState.IN_USE and word.fault:
            is_new = word.fault is BladeFault.CRACKED
            yield _Mark(word.at, EdgeEnd.NOT_SAID, begins=True, only_if_broken=True, is_new=is_new)


def _moments_back(log: BladeLog) -> Iterator[datetime]:
    yield from (one.at for one in log.sharpened)
    yield from (turn.at for turn in log.turns if log.blade in turn.in_hand)


def _ended(edge: Edge, at: datetime, end: EdgeEnd, moments: Sequence[datetime]) -> Edge:
    """The edge ended then, unless it had ended before."""
    return edge if edge.is_over else _counted(replace(edge, ended_at=at, end=end), moments)


def _counted(edge: Edge, moments: Sequence[datetime]) -> Edge:
    first = bisect_left(moments, edge.begun_at)
    last = bisect_left(moments, edge.ended_at) if edge.ended_at else len(moments)
    return replace(edge, cows=max(0, last - first))


def _by_hand(edge: Edge, sharpened: Sharpened | None) -> Edge:
    if sharpened is None or sharpened.cows_by_hand is None:
        return edge
    return replace(edge, cows=sharpened.cows_by_hand, by_hand=True)


_END_BEFORE = {
    EdgeBefore.DULL: EdgeEnd.WENT_DULL,
    EdgeBefore.STILL_CUT: EdgeEnd.STILL_CUT,
    EdgeBefore.CHIPPED: EdgeEnd.BROKEN,
    EdgeBefore.NOT_SAID: EdgeEnd.NOT_SAID,
}
_END_LABELS = {
    EdgeEnd.WENT_DULL: "Went dull",
    EdgeEnd.STILL_CUT: "Sharpened while it still cut",
    EdgeEnd.NOT_SAID: "Not said how it was",
    EdgeEnd.BROKEN: "Cracked, chipped or bent",
    EdgeEnd.TAKEN_OUT: "Taken out of use",
    EdgeEnd.IN_USE: "On the blade now",
}
