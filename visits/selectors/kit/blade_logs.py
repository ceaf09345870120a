"""All that is known of a business's blades and their work, ready for the domain."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from functools import cached_property

from django.db.models import Q

from trimops.kernel.clock import at_local
from trimops.kernel.scope import Scope
from visits.domain.actions import TrimKind
from visits.domain.kit.blade_kinds import (
    BladeFault,
    BladeKind,
    BladeState,
    EdgeBefore,
    Hand,
    SharpenMethod,
    TurnPart,
)
from visits.domain.kit.blade_life import BladeWord
from visits.domain.kit.edge_life import EdgeLives, learn_lives
from visits.domain.kit.edge_lives import BladeLog, Edge, Sharpened, edges_of
from visits.domain.kit.edge_log import CowCut, Turn, cows_by_blade
from visits.models import Blade, BladeEvent, BladeSaid, BladeTurn, Sharpening, Trim

KEPT_DAYS = 730
"""How far back edges are learned from: older ones say little of today's steel, hands and grit."""

BROKEN = [part.value for part in TurnPart if part.is_out]
_Said = defaultdict[int, defaultdict[str, set[int]]]
"""By turn and part, the blades."""


@dataclass(frozen=True)
class BladeLogs:
    """The blades of a business, whatever became of them, their logs and the cows each was in hand at. `broken_before`:
    by blade, what was said cracked or chipped at the crush before the logs begin.
    """

    blades: Sequence[Blade]
    logs: Mapping[int, BladeLog]
    cows: Mapping[int, Sequence[CowCut]]
    turns: Sequence[Turn]
    broken_before: Mapping[int, Sequence[BladeWord]]

    @cached_property
    def edges(self) -> dict[int, tuple[Edge, ...]]:
        """The edges of each blade in order, the last one on it now."""
        return {blade: edges_of(log, self.cows.get(blade, ())) for blade, log in self.logs.items()}

    def lives(self, cows_per_edge: float) -> EdgeLives:
        """What all edges say, over the business's own figure."""
        return learn_lives((edge for edges in self.edges.values() for edge in edges), cows_per_edge)


def blade_logs(scope: Scope, now: datetime) -> BladeLogs:
    """The last two years of them. Six queries."""
    since = now - timedelta(days=KEPT_DAYS)
    blades = list(Blade.objects.within(scope).select_related("business", "van"))
    words, sharpened = _words(scope), _sharpened(scope, since)
    said, broken_before = _said(scope, since)
    turns = _turns(scope, since, said)
    by_blade = _turns_by_blade(turns)
    logs = {
        blade.pk: _log(blade, since, words.get(blade.pk, ()), sharpened.get(blade.pk, ()), by_blade[blade.pk])
        for blade in blades
    }
    cows = cows_by_blade(_cows(scope, turns[0].at), turns) if turns else {}
    return BladeLogs(blades, logs, cows, turns, broken_before)


def _log(
    blade: Blade,
    since: datetime,
    words: Sequence[BladeWord],
    sharpened: Sequence[Sharpened],
    turns: Sequence[Turn],
) -> BladeLog:
    bought = at_local(blade.bought_on, time(0), blade.business.zone)
    first = min(words, key=lambda word: word.at, default=None)
    was_used = bought < since or (first is not None and first.says is BladeState.IN_USE)
    return BladeLog(
        blade.pk,
        BladeKind(blade.kind),
        Hand(blade.hand),
        max(bought, since),
        was_used,
        words=tuple(words),
        turns=tuple(turns),
        sharpened=tuple(sharpened),
    )


def _words(scope: Scope) -> dict[int, list[BladeWord]]:
    words: defaultdict[int, list[BladeWord]] = defaultdict(list)
    rows = BladeEvent.objects.within(scope).values_list("blade_id", "at", "state", "fault")
    for blade, at, state, fault in rows:
        words[blade].append(BladeWord(at, BladeState(state), BladeFault(fault) if fault else None))
    return words


def _sharpened(scope: Scope, since: datetime) -> dict[int, list[Sharpened]]:
    found: defaultdict[int, list[Sharpened]] = defaultdict(list)
    rows = Sharpening.objects.within(scope).filter(at__gte=since)
    for blade, at, method, before, by_hand in rows.values_list(
        "blade_id", "at", "method", "before", "cows_since_last"
    ):
        how = SharpenMethod(method) if method else None
        found[blade].append(Sharpened(at, how, EdgeBefore(before), by_hand))
    return found


def _said(scope: Scope, since: datetime) -> tuple[_Said, dict[int, list[BladeWord]]]:
    """What turns since then said, and what was said broken before: a crack does not grow old."""
    said: _Said = defaultdict(lambda: defaultdict(set))
    broken: defaultdict[int, list[BladeWord]] = defaultdict(list)
    rows = BladeSaid.objects.within(scope).filter(Q(turn__at__gte=since) | Q(part__in=BROKEN))
    for turn, at, part, blade in rows.values_list("turn_id", "turn__at", "part", "blade_id"):
        if at >= since:
            said[turn][part].add(blade)
        else:
            broken[blade].append(BladeWord(at, TurnPart(part)))
    return said, broken


def _turns(scope: Scope, since: datetime, said: _Said) -> list[Turn]:
    rows = BladeTurn.objects.within(scope).filter(at__gte=since).order_by("at", "record")
    return [
        Turn(visit, van, at, **{part: frozenset(blades) for part, blades in said.get(pk, {}).items()})
        for pk, visit, van, at in rows.values_list("pk", "visit_id", "visit__van_id", "at")
    ]


def _turns_by_blade(turns: Sequence[Turn]) -> defaultdict[int, list[Turn]]:
    found: defaultdict[int, list[Turn]] = defaultdict(list)
    for turn in turns:
        for blade in turn.in_hand | turn.went_dull | turn.cracked | turn.chipped:
            found[blade].append(turn)
    return found


def _cows(scope: Scope, since: datetime) -> list[CowCut]:
    rows = Trim.objects.within(scope).filter(recorded_at__gte=since).exclude(kind=TrimKind.CHECK.value)
    return [
        CowCut(*row)
        for row in rows.order_by().values_list("visit_id", "visit__van_id", "recorded_at", "crush_seconds")
    ]
