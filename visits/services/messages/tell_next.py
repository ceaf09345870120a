"""The next farm of the day is told that the van is on its way."""

from datetime import datetime, timedelta

from trimops.kernel.clock import local_day
from visits.domain.messages.message_kinds import MessageKind
from visits.models import Visit, VisitMessage
from visits.selectors.day_arrivals import DayArrivals, StopArrival, arrivals_of
from visits.selectors.messages.message_facts import News
from visits.selectors.messages.told_so_far import hour_counted_on
from visits.services.messages.tell_farms import tell_farms

FRESH = timedelta(minutes=30)
"""A finish heard of later than this, since the phone was out of reach, tells nobody that the van is on its way."""
WITHIN = timedelta(minutes=90)
"""A van that arrives later than this from now is not on its way: it eats, or waits for an hour promised."""


def tell_next(*, visit: Visit, at: datetime) -> list[VisitMessage]:
    """`visit` is the one finished; its van and business at hand. Nothing where the van is at another farm by now."""
    if visit.van is None or visit.finished_at is None or at - visit.finished_at > FRESH:
        return []
    day = local_day(visit.finished_at, visit.business.zone)
    arrivals = arrivals_of(visit.business, visit.van, day, at)
    stop = _next(arrivals) if arrivals else None
    if stop is None or stop.arrive is None or stop.is_overdue or stop.arrive.likely - at > WITHIN:
        return []
    hour = hour_counted_on(stop.visit) or stop.visit.planned_start
    if hour is None:
        return []
    news = News(MessageKind.ON_THE_WAY, hour, f"after {visit.pk}", arrive=stop.arrive)
    return tell_farms(visit=stop.visit, news=news, at=at)


def _next(arrivals: DayArrivals) -> StopArrival | None:
    """The first that has not begun; None while one is under way."""
    if any(stop.arrive is None and stop.finish is not None for stop in arrivals.stops):
        return None
    return next((stop for stop in arrivals.stops if stop.arrive is not None), None)
