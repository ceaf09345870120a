"""The other herds of a business as counts without names: what one herd may be set against."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import date, time, timedelta
from itertools import groupby
from operator import itemgetter

from farms.models import Farm
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import CowSeen, FootSeen, HerdFacts, LesionSeen
from visits.domain.herd.lesion_families import What
from visits.domain.herd.lesion_rates import rate_of
from visits.domain.herd.rounds import TrimRound, whole_herd_rounds
from visits.domain.herd.shrunken_rates import HerdCount
from visits.domain.herd.story_others import COMPARED, OtherHerds
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.visit_states import VisitReason
from visits.models import Trim

DAYS_BACK, DAWN = 366, time()
SEEN = (
    *("visit__farm_id", "visit__farm__herd_size", "id", "cow_id", "visit_id", "recorded_at"),
    *("feet__findings__lesion", "feet__findings__dd_stage"),
)


def business_herds(farm: Farm, today: date) -> OtherHerds:
    """The newest whole-herd round within a year of each other farm of the business. One query.

    Read in the scope of the business, also when a farm client asks: nothing of it leaves but sums over herds.
    """
    newest = [rounds[-1] for rounds in (_rounds(*told, today) for told in _routine(farm, today)) if rounds]
    return OtherHerds({what: tuple(HerdCount(*_counted(each, what)) for each in newest) for what in COMPARED})


def _counted(newest: TrimRound, what: What) -> tuple[int, int]:
    rate = rate_of(newest, what)
    return rate.cows, rate.seen


def _rounds(herd_size: int, seen: tuple[CowSeen, ...], today: date) -> tuple[TrimRound, ...]:
    return whole_herd_rounds(HerdFacts(today, (), seen, herd_size=herd_size))


def _routine(farm: Farm, today: date) -> Iterator[tuple[int, tuple[CowSeen, ...]]]:
    """The size of each other herd and its cows at routine visits. A lesion stands on no certain foot here."""
    zone = farm.business.zone
    since = at_local(today - timedelta(days=DAYS_BACK), DAWN, zone)
    until = at_local(today + timedelta(days=1), DAWN, zone)
    rows = Trim.objects.within(Scope(farm.business_id)).exclude(visit__farm=farm)
    rows = rows.filter(recorded_at__gte=since, recorded_at__lt=until, visit__reason=VisitReason.ROUTINE.value)
    rows = rows.filter(visit__farm__erased_at__isnull=True).order_by("visit__farm_id", "recorded_at", "id")
    for (_, herd_size), lines in groupby(rows.values_list(*SEEN).distinct(), itemgetter(0, 1)):
        seen: dict[int, tuple[int, int, date]] = {}
        found: dict[int, list[LesionSeen]] = defaultdict(list)
        for _, _, trim, cow, visit, at, lesion, stage in lines:
            seen[trim] = (cow, visit, local_day(at, zone))
            if lesion:
                found[trim].append(
                    LesionSeen(LesionCode(lesion), Claw.SKIN, dd_stage=DDStage(stage) if stage else None)
                )
        yield (
            herd_size,
            tuple(
                CowSeen(cow, day, visit, VisitReason.ROUTINE, (FootSeen(Foot.LEFT_HIND, tuple(found[trim])),))
                for trim, (cow, visit, day) in seen.items()
            ),
        )
