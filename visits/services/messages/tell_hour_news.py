"""The farm of a visit is told what is new of its hour, once the visit has settled."""

from datetime import datetime, timedelta

from django.db import transaction

from trimops.errands.kinds import TryLater
from trimops.kernel.clock import at_local, local_day
from visits.domain.messages.hour_news import SETTLES, HourKnown, HourNews, HourNow, hour_news
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.quiet_hours import goes_at
from visits.models import MessageRules, Visit, VisitMessage
from visits.selectors.messages.message_facts import News
from visits.selectors.messages.rules_in_use import rules_of
from visits.selectors.messages.told_so_far import hour_known, was_told_of_day
from visits.services.messages.tell_farms import about_hour, still_known, tell_farms
from visits.services.messages.tell_tomorrow import tell_of_tomorrow
from visits.services.tell_hour import tell_hour

DAY = timedelta(days=1)


@transaction.atomic
def tell_hour_news(*, visit: Visit, at: datetime) -> list[VisitMessage]:
    """What the farm was last told against what is so; nothing where it knows. Twice tells once, in whatever order.

    TryLater while the visit is still being changed, and through quiet hours that can be waited for: then what is so
    by that time is told.
    """
    visit.locked()
    rows = Visit.objects.within(visit.scope).select_related("farm", "business", "van__trimmer")
    row = rows.get(pk=visit.pk)
    found = _news(row, at)
    rules = rules_of(row.business)
    if found is None or not _is_told(found, row, rules, at):
        return []
    if at < row.changed_at + SETTLES:
        raise TryLater(row.changed_at + SETTLES, "It was changed just now.")
    news = _as_told(row, found)
    goes = goes_at(at, about_hour(news), rules.quiet)
    if goes > at:
        raise TryLater(goes, "The farm is left in peace until then.")
    if news.kind.tells_hour and _tomorrow_is_due(row, rules, at):
        return tell_of_tomorrow(visit=row, at=at)
    return tell_farms(visit=row, news=news, at=at)


def _news(visit: Visit, at: datetime) -> HourNews | None:
    if still_known(visit):
        tell_hour(visit=visit, at=at, by=None, note="the farm counts on this hour since it was told")
        return None
    stands = HourNow(visit.visit_state, visit.planned_start, at, visit.business.zone)
    return hour_news(HourKnown(hour_known(visit)), stands)


def _is_told(found: HourNews, visit: Visit, rules: MessageRules, at: datetime) -> bool:
    return rules.is_on(found.kind) or (found.kind.tells_hour and _tomorrow_is_due(visit, rules, at))


def _tomorrow_is_due(visit: Visit, rules: MessageRules, at: datetime) -> bool:
    """Whether the visit came into tomorrow after the others of that day were told: then that message says it all."""
    if not rules.is_on(MessageKind.TOMORROW) or visit.planned_start is None:
        return False
    zone = visit.business.zone
    today, day = local_day(at, zone), local_day(visit.planned_start, zone)
    is_tomorrow = day == today + DAY and at >= at_local(today, rules.tomorrow_at, zone)
    return is_tomorrow and not was_told_of_day(visit, day)


def _as_told(visit: Visit, found: HourNews) -> News:
    # because: an hour may go and come back, so the hour alone does not name the news; the sequence rises each time
    once = f"{found.hour.timestamp():.0f}:{visit.calendar_sequence}"
    return News(found.kind, found.hour, once, before=found.before)
