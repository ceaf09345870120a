"""What a farm was told of a visit."""

from collections.abc import Collection
from datetime import date, datetime

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.messages.message_kinds import ABOUT_HOUR, MessageKind
from visits.domain.visit_states import VisitState
from visits.models import Visit, VisitMessage

NAMES_HOUR = (*ABOUT_HOUR, MessageKind.TOMORROW)


def hour_known(visit: Visit) -> datetime | None:
    """The hour that the farm counts on; None where it knows of none, or was told that it is gone.

    A visit that was put off has lost its `hour_told`: then the newest message says what the farm still believes.
    """
    if visit.hour_told is not None:
        return visit.hour_told
    rows = VisitMessage.objects.within(visit.scope).filter(visit=visit)
    last = rows.filter(kind__in=[kind.value for kind in NAMES_HOUR]).order_by("-made_at", "-id").first()
    return None if last is None or MessageKind(last.kind).takes_back else last.hour


def was_told_of_day(visit: Visit, day: date) -> bool:
    """Whether the message of the day before went for this `day` of the business's zone."""
    rows = VisitMessage.objects.within(visit.scope).filter(visit=visit, kind=MessageKind.TOMORROW.value)
    hours = rows.values_list("hour", flat=True)
    return any(hour is not None and local_day(hour, visit.business.zone) == day for hour in hours)


def hour_counted_on(visit: Visit) -> datetime | None:
    """Of a visit in the diary: the hour told, or the one that the farm said yes to."""
    is_agreed = visit.visit_state is VisitState.CONFIRMED
    return visit.hour_told or (visit.planned_start if is_agreed else None)


def latest_told(scope: Scope, visits: Collection[Visit]) -> dict[int, datetime]:
    """Visit key -> the latest arrival that its farm was last told; who knows of no hour is not in it. One query."""
    hours = {visit.pk: hour_counted_on(visit) or visit.planned_start for visit in visits}
    told = {visit.pk: hour for visit in visits if (hour := hour_counted_on(visit)) is not None}
    for row in VisitMessage.objects.within(scope).filter(visit__in=visits).order_by("made_at", "id"):
        # because: what was told for another hour is over
        if row.hour is not None and row.hour == hours[row.visit_id]:
            told[row.visit_id] = row.latest or row.hour
    return told


def messages_of(scope: Scope, visits: Collection[Visit]) -> list[VisitMessage]:
    """With contact and what went at hand, in their order. One query."""
    rows = VisitMessage.objects.within(scope).filter(visit__in=visits)
    return list(rows.select_related("contact", "outgoing").order_by("made_at", "id"))
