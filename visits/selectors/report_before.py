"""What a visit found, beside the last round and the round of the same season a year ago, and whether it speaks for
the herd (`visits/domain/herd/rounds.py`)."""

from collections import Counter
from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, timedelta

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from trimops.paper.days import day_short_year
from visits.documents.visit_report_content import Comparison, FindingCount
from visits.domain.herd.facts import CowSeen, HerdFacts, a_year_before
from visits.domain.herd.rounds import TrimRound, rounds_of
from visits.domain.lesions import LESIONS, LesionCode
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Finding, Trim, Visit
from visits.selectors.herd_facts import Reading, lives_of

LOOKS_BACK = timedelta(days=366 + 60)
SAME_SEASON = timedelta(days=46)


@dataclass(frozen=True)
class Counted:
    """The counts of a visit and what they are set against."""

    whole_herd: bool
    round_note: str
    compared: tuple[Comparison, ...]
    findings: tuple[FindingCount, ...]


def counted_before(visit: Visit, day: date) -> Counted:
    """Four queries. A visit by need is compared with none: its cows were chosen for their feet."""
    scope = Scope(visit.business_id)
    rounds = _rounds(scope, visit, day)
    own = next((r for r in rounds if visit.pk in r.visits), None)
    against: list[tuple[str, TrimRound]] = []
    if own is not None and visit.reason == VisitReason.ROUTINE:
        against = _against(own, rounds)
    wanted = {visit.pk}.union(*(r.visits for _, r in against))
    pairs = set(
        Finding.objects.within(scope)
        .filter(trimmed_foot__trim__visit_id__in=wanted, trimmed_foot__trim__taken_back_at__isnull=True)
        .values_list("trimmed_foot__trim__visit_id", "lesion", "trimmed_foot__trim__cow_id")
    )
    return Counted(
        whole_herd=own is not None and own.is_whole_herd,
        round_note=_round_note(own, visit),
        compared=tuple(Comparison(label, r.cows, r.is_whole_herd) for label, r in against),
        findings=_findings(pairs, visit.pk, [r for _, r in against]),
    )


def _rounds(scope: Scope, visit: Visit, day: date) -> list[TrimRound]:
    """The routine rounds of the farm up to this visit, or this visit alone where it came by need."""
    zone = visit.business.zone
    rows = Trim.objects.within(scope).filter(visit__farm_id=visit.farm_id)
    if visit.reason == VisitReason.ROUTINE and visit.finished_at:
        rows = rows.filter(
            visit__state=VisitState.FINISHED.value,
            visit__reason=VisitReason.ROUTINE.value,
            visit__finished_at__gte=visit.finished_at - LOOKS_BACK,
            visit__finished_at__lte=visit.finished_at,
        )
    else:
        rows = rows.filter(visit=visit)
    looks = [
        CowSeen(cow, local_day(at, zone), pk, VisitReason(reason))
        for cow, at, pk, reason in rows.values_list("cow_id", "recorded_at", "visit_id", "visit__reason")
    ]
    looks.sort(key=lambda look: look.day)
    lives = tuple(lives_of(Reading(scope, visit.farm, day), looks))
    facts = HerdFacts(day, lives, tuple(looks), herd_size=visit.farm.herd_size)
    return list(rounds_of(facts))


def _against(own: TrimRound, rounds: Collection[TrimRound]) -> list[tuple[str, TrimRound]]:
    earlier = [r for r in rounds if r.last < own.first]
    if not earlier:
        return []
    last = max(earlier, key=lambda r: r.last)
    a_year_ago = a_year_before(own.first)
    season = min(earlier, key=lambda r: abs(r.first - a_year_ago))
    if abs(season.first - a_year_ago) > SAME_SEASON or season is last:
        return [(f"last time, {_days(last)}", last)]
    return [(f"last time, {_days(last)}", last), (f"a year ago, {_days(season)}", season)]


def _days(found: TrimRound) -> str:
    """ "3 Mar 2026", or from when on where it took several days."""
    return f"{'from ' if found.last > found.first else ''}{day_short_year(found.first)}"


def _round_note(own: TrimRound | None, visit: Visit) -> str:
    if own is None or len(own.visits) == 1:
        return ""
    since = day_short_year(own.first)
    herd = f" of {own.herd:,}" if own.herd else ""
    return f"With the other visits since {since}: {own.cows:,}{herd} cows seen."


def _findings(
    pairs: Collection[tuple[int, str, int]], visit: int, rounds: Collection[TrimRound]
) -> tuple[FindingCount, ...]:
    now = _cows_by_lesion(pairs, {visit})
    before = [_cows_by_lesion(pairs, set(r.visits)) for r in rounds]
    codes = sorted(
        {code for counts in (now, *before) for code in counts}, key=lambda code: (-now[code], code)
    )
    return tuple(
        FindingCount(LESIONS[LesionCode(code)].name, now[code], tuple(counts[code] for counts in before))
        for code in codes
    )


def _cows_by_lesion(pairs: Collection[tuple[int, str, int]], visits: set[int]) -> Counter[str]:
    return Counter(code for code, _ in {(code, cow) for visit, code, cow in pairs if visit in visits})
