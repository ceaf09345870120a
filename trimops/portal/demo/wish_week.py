"""What is wanted for the coming week: the nightly rules, and two farms that ring about lame cows."""

from datetime import date, datetime, timedelta

from farms.models import Cow, Farm
from trimops.kernel.scope import Scope
from trimops.portal.demo.build_people import Crew
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason
from visits.models import Visit
from visits.services.ask_visit import CowWish, VisitWish, ask_visit
from visits.services.sweep_rechecks import sweep_rechecks, sweep_routine

URGENT_SCORES = (2, 3)


def wish_week(crew: Crew, today: date, monday: date, at: datetime) -> int:
    """Re-checks gathered, routine visits wanted, two urgent ones asked for; how many visits that makes."""
    scope = Scope(crew.business.pk)
    wanted = sweep_rechecks(scope=scope, today=today, at=at)
    for farm, score in zip(_quiet_farms(scope), URGENT_SCORES, strict=False):
        _ring_about_a_lame_cow(crew, farm, score, monday, at)
        wanted += 1
    return wanted + sweep_routine(scope=scope, today=today, at=at)


def _quiet_farms(scope: Scope) -> list[Farm]:
    """Farms with no visit open, else any: those that are visited anyway do not ring."""
    busy = Visit.objects.within(scope).open().values("farm_id")
    farms = Farm.objects.within(scope).active().filter(hygiene_level__lt=3).order_by("pk")
    return [*farms.exclude(pk__in=busy), *farms.filter(pk__in=busy)]


def _ring_about_a_lame_cow(crew: Crew, farm: Farm, score: int, monday: date, at: datetime) -> Visit:
    cow = Cow.objects.within(farm.scope).on_farm().filter(farm=farm).order_by("-calved_on").first()
    named = [CowWish(cow, "walks lame on a hind foot", MobilityScale.UK, score)] if cow else []
    wish = VisitWish(
        reason=VisitReason.URGENT,
        asked_by="the herd manager, by telephone",
        due_from=monday,
        due_until=monday + timedelta(days=0 if score == 3 else 1),
        head_count=2,
        corrective_count=2,
        mobility_scale=MobilityScale.UK,
        mobility_score=score,
        note="One cow named, a second to be looked at.",
        cows=named,
    )
    return ask_visit(farm=farm, wish=wish, at=at, by=crew.people["office"])
