"""Farms of tomorrow are told when the van likely comes, and which cows to bring."""

import logging
from collections.abc import Iterable
from datetime import datetime, timedelta

from django.db import transaction

from trimops.accounts.models import Business
from trimops.errands.kinds import TryLater
from trimops.kernel.clock import at_local, from_to, local_day
from trimops.kernel.scope import Scope
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.visit_states import VisitState
from visits.models import Visit, VisitMessage
from visits.selectors.day_arrivals import arrival_at
from visits.selectors.draft_content import draft_content
from visits.selectors.messages.message_facts import News
from visits.selectors.messages.rules_in_use import rules_of
from visits.services.messages.tell_farms import tell_farms

log = logging.getLogger(__name__)

DAY = timedelta(days=1)
AHEAD = (VisitState.PLANNED, VisitState.CONFIRMED)


def tell_tomorrow(*, business: Business, at: datetime) -> list[VisitMessage]:
    """Each visit by itself, so that one that cannot be told costs no other its message. Twice tells once.

    TryLater until the business's hour for it has come. What kept the first that could not be told from it is raised
    at the end.
    """
    rules = rules_of(business)
    if not rules.is_on(MessageKind.TOMORROW):
        return []
    today = local_day(at, business.zone)
    due = at_local(today, rules.tomorrow_at, business.zone)
    if at < due:
        raise TryLater(due, "Farms are told of tomorrow at that hour.")
    first, last = from_to(today + DAY, today + DAY, business.zone)
    rows = Visit.objects.within(Scope(business.pk)).in_state(*AHEAD).starting_between(first, last)
    visits = rows.select_related("farm", "business", "van__trimmer").order_by("planned_start", "id")
    return _tell_each(visits, at)


def _tell_each(visits: Iterable[Visit], at: datetime) -> list[VisitMessage]:
    written: list[VisitMessage] = []
    faults: list[Exception] = []
    for visit in visits:
        try:
            written += tell_of_tomorrow(visit=visit, at=at)
        except Exception as fault:  # because: the others are told first, then it is said and tried again
            log.exception("not told of tomorrow: visit %s", visit.pk)
            faults.append(fault)
    if faults:
        raise faults[0]
    return written


@transaction.atomic
def tell_of_tomorrow(*, visit: Visit, at: datetime) -> list[VisitMessage]:
    """One farm, once for each day that its visit is on. Farm, business and van must be at hand."""
    visit.locked()
    stop = arrival_at(visit, at)
    if visit.planned_start is None or stop is None:
        return []
    day = local_day(visit.planned_start, visit.business.zone)
    news = News(
        MessageKind.TOMORROW,
        visit.planned_start,
        f"{day}",
        arrive=stop.arrive,
        draft=draft_content(visit, at),
    )
    return tell_farms(visit=visit, news=news, at=at)
