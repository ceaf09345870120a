"""A visit changes: whoever tells farms by itself is asked to look at it, in the same transaction."""

from datetime import datetime

from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from visits.domain.messages.hour_news import SETTLES
from visits.domain.messages.message_kinds import ABOUT_HOUR, MessageKind
from visits.domain.visit_states import VisitState
from visits.models import Visit, VisitMessage
from visits.selectors.messages.rules_in_use import any_on
from visits.selectors.messages.told_so_far import hour_known

TELLING = (VisitState.WANTED, VisitState.PLANNED, VisitState.CONFIRMED, VisitState.CALLED_OFF)


def want_news(*, visit: Visit, at: datetime) -> None:
    """Have the farm told once the visit has settled. Call with the visit locked, before it is saved as changed.

    What the farm knows of the hour that goes is kept first, for the change may wipe it off. One query where nothing
    is switched on.
    """
    if visit.visit_state not in TELLING or not any_on(visit.scope, (*ABOUT_HOUR, MessageKind.TOMORROW)):
        return
    _keep_what_it_knows(visit, at)
    enqueue(Job.TELL_FARMS, visit.business_id, not_before=at + SETTLES, visit_id=visit.pk)


def want_next_told(*, visit: Visit) -> None:
    """A visit is finished: the next farm of the day is told that the van is on its way."""
    if visit.van_id is not None and any_on(visit.scope, (MessageKind.ON_THE_WAY,)):
        enqueue(Job.TELL_NEXT, visit.business_id, visit_id=visit.pk)


def _keep_what_it_knows(visit: Visit, at: datetime) -> None:
    """An hour that the farm said yes to, or was told by hand: kept as a message without a person and without a way."""
    stored = Visit.objects.within(visit.scope).get(pk=visit.pk)
    is_agreed = stored.visit_state is VisitState.CONFIRMED
    knew = stored.hour_told or (stored.planned_start if is_agreed else None)
    if knew is None or knew == visit.hour_told:
        return
    stored.hour_told = None
    if hour_known(stored) != knew:
        VisitMessage.objects.create(
            business_id=visit.business_id, visit=visit, kind=MessageKind.BOOKED.value, hour=knew, made_at=at
        )
