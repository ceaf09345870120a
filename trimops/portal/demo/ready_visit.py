"""One visit of today, confirmed and left to be begun at the crush: lame cows named, feet due, blocks standing."""

from collections import Counter
from collections.abc import Iterator
from datetime import date, datetime, time, timedelta

from farms.models import Cow, Farm
from farms.selectors.farm_windows import milkings_by_farm, windows_of
from trimops.accounts.models import Business
from trimops.kernel.clock import at_local
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from trimops.portal.demo.build_people import Crew
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Block, Recheck, Van, Visit
from visits.services.ask_visit import CowWish, VisitWish, ask_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.plan_visit import VanIsBusy, plan_visit

NOTE = "The first cows stand in the pen by the crush."
HEAD_COUNT = 16
DAY_OF_WORK = (time(7), time(17, 30))
LATEST_HOUR = 20
SCORES = (3, 2, 2)
WHY_LAME = ("walks lame, right hind", "slow to the parlour", "rests one hind foot")
WHY_ASKED = ("long toes", "outer claws grown over", "before drying off", "long toes")


class NoHourLeft(RuleBroken):
    """Both vans are out from morning to night."""

    code = "no_hour_left"


def ready_visit(crew: Crew, today: date, at: datetime) -> Visit:
    """Asked for, planned for today and confirmed, before the rules gather what is due: its due feet go with it."""
    farm = _farm_with_most_due(crew.business, today)
    named = _named(farm)
    wish = VisitWish(
        reason=VisitReason.ROUTINE,
        asked_by="the herd manager, by telephone",
        due_from=today,
        due_until=today + timedelta(days=6),
        head_count=HEAD_COUNT,
        corrective_count=len(SCORES),
        note=NOTE,
        cows=named,
    )
    visit = ask_visit(farm=farm, wish=wish, at=at, by=crew.people["office"])
    visit = _planned(crew, visit, today, at)
    due = Recheck.objects.within(farm.scope).open().filter(farm=farm, due_from__lte=today)
    due.update(visit=visit)
    return confirm_visit(visit=visit, at=at, by=crew.people["office"], note="by telephone")


def visit_to_begin(business: Business) -> Visit | None:
    """The visit that was left ready, as long as it is not finished."""
    rows = Visit.objects.within(Scope(business.pk)).filter(note=NOTE)
    open_rows = rows.in_state(VisitState.PLANNED, VisitState.CONFIRMED, VisitState.UNDER_WAY)
    return open_rows.select_related("farm", "business", "van__trimmer").order_by("-pk").first()


def _farm_with_most_due(business: Business, today: date) -> Farm:
    """A farm that no visit is promised to where a block is to come off, with most feet due; else the next best."""
    scope = Scope(business.pk)
    promised = Visit.objects.within(scope).open().values("farm_id")
    farms = list(Farm.objects.within(scope).active().filter(hygiene_level__lt=3).order_by("pk"))
    free = list(Farm.objects.within(scope).active().exclude(pk__in=promised).values_list("pk", flat=True))
    feet = Counter(
        Recheck.objects.within(scope).open().filter(due_from__lte=today).values_list("farm_id", flat=True)
    )
    on = Block.objects.within(scope).filter(off_on__isnull=True)
    blocks = Counter(on.filter(off_due__lte=today).values_list("cow__farm_id", flat=True))
    if not farms:
        raise NoHourLeft("The demo has no farm to visit.")
    return max(farms, key=lambda farm: (farm.pk in free, blocks[farm.pk] > 0, feet[farm.pk]))


def _named(farm: Farm) -> list[CowWish]:
    """Lame cows with their scores, then others that the farm wants seen; none of them due anyway."""
    due = Recheck.objects.within(farm.scope).open().filter(farm=farm).values("cow_id")
    cows = Cow.objects.within(farm.scope).on_farm().filter(farm=farm, status="milking").exclude(pk__in=due)
    wanted = len(SCORES) + len(WHY_ASKED)
    rows = list(cows.order_by("calved_on", "pk")[:wanted])
    lame, rest = rows[: len(SCORES)], rows[len(SCORES) :]
    return [
        *(
            CowWish(cow, why, MobilityScale.UK, score)
            for cow, why, score in zip(lame, WHY_LAME, SCORES, strict=False)
        ),
        *(CowWish(cow, why) for cow, why in zip(rest, WHY_ASKED, strict=False)),
    ]


def _planned(crew: Crew, visit: Visit, today: date, at: datetime) -> Visit:
    """At the first hour of the farm's working time at which a van is free, the trimmer's own van first."""
    for van, start in _hours(crew, visit, today):
        try:
            return plan_visit(visit=visit, van=van, start=start, at=at, by=crew.people["office"])
        except VanIsBusy:
            continue
    raise NoHourLeft("Both vans are out all day: choose another day for the demo.")


def _hours(crew: Crew, visit: Visit, today: date) -> Iterator[tuple[Van, datetime]]:
    zone = crew.business.zone
    milkings = milkings_by_farm(Scope(crew.business.pk)).get((visit.farm_id, today.weekday()), [])
    length = timedelta(minutes=visit.expected_minutes)
    windows = windows_of(visit.farm, today, zone, milkings, DAY_OF_WORK)
    clocks = [time(hour, minute) for hour in range(8, LATEST_HOUR) for minute in (0, 30)]
    starts = [at_local(today, clock, zone) for clock in clocks]
    within = [start for start in starts if any(a <= start and start + length <= b for a, b in windows)]
    vans = sorted(crew.vans, key=lambda van: van.trimmer_id != crew.people["trimmer"].pk)
    yield from ((van, start) for start in within for van in vans)
    yield from ((van, start) for start in starts for van in vans)
