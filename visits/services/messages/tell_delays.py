"""Farms of a van's day are told that it comes later than they were told."""

from collections.abc import Collection
from datetime import datetime, timedelta

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.messages.late_news import StopSoFar, late_stops
from visits.domain.messages.message_kinds import MessageKind
from visits.models import Van, VisitMessage
from visits.selectors.day_arrivals import StopArrival, arrivals_of
from visits.selectors.messages.last_signs import last_signs
from visits.selectors.messages.message_facts import News
from visits.selectors.messages.rules_in_use import rules_of
from visits.selectors.messages.told_so_far import hour_counted_on, latest_told
from visits.services.messages.tell_farms import tell_farms


def tell_delays(*, van: Van, at: datetime) -> list[VisitMessage]:
    """Each farm that comes more than the business's minutes after the latest it was told, once for what it was told:
    the next message wants as much again. Business of the van at hand.
    """
    rules = rules_of(van.business)
    if not rules.is_on(MessageKind.LATE):
        return []
    arrivals = arrivals_of(van.business, van, local_day(at, van.business.zone), at)
    stops = arrivals.stops if arrivals else ()
    scope, visits = Scope(van.business_id), [stop.visit for stop in stops]
    told, signs = latest_told(scope, visits), last_signs(scope, visits)
    so_far = [_so_far(stop, told, signs) for stop in stops]
    late = late_stops(so_far, timedelta(minutes=rules.late_minutes), at)
    return [
        message for stop in stops if stop.visit.pk in late for message in _tell(stop, told[stop.visit.pk], at)
    ]


def _so_far(stop: StopArrival, told: dict[int, datetime], signs: dict[int, datetime]) -> StopSoFar:
    pk, arrive = stop.visit.pk, stop.arrive
    return StopSoFar(pk, told.get(pk), arrive.likely if arrive else None, stop.is_overdue, signs.get(pk))


def _tell(stop: StopArrival, told: datetime, at: datetime) -> Collection[VisitMessage]:
    hour = hour_counted_on(stop.visit) or stop.visit.planned_start
    if hour is None:
        return []
    news = News(MessageKind.LATE, hour, f"{told.timestamp():.0f}", arrive=stop.arrive)
    return tell_farms(visit=stop.visit, news=news, at=at)
