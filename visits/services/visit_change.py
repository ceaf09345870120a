"""The one door through which a visit changes state: guard, lock, history."""

from datetime import datetime

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.domain.visit_states import VisitState, may_move
from visits.models import Visit, VisitEvent
from visits.services.count_for_calendars import count_for_calendars
from visits.services.messages.want_telling import want_news
from visits.services.tell_visit_event import tell_visit_event
from visits.services.want_invitations import want_invitations


class VisitCannotMove(RuleBroken):
    """The visit is not in a state from which this can be done."""

    code = "visit_cannot_move"


def begin_change(visit: Visit, to: VisitState) -> Visit:
    """The visit read anew and locked, if it may become `to`; else VisitCannotMove. Call inside a transaction."""
    row = visit.locked()
    if not may_move(row.visit_state, to):
        raise VisitCannotMove(
            f"This visit is {row.visit_state.label.lower()} and cannot become {to.label.lower()}. "
            "Look at its page again: somebody may have been quicker."
        )
    return row


def keep_change(visit: Visit, to: VisitState, *, at: datetime, by: User | None, note: str = "") -> Visit:
    """Store the visit in its new state, with a line of history; calendars hear of it if time or state are others."""
    before, van_before = visit.state, visit.last_van_id
    visit.state = to.value
    visit.changed_at = at
    is_other = count_for_calendars(visit=visit)
    visit.full_clean()
    if is_other:
        want_news(visit=visit, at=at)
    visit.save()
    if is_other:
        want_invitations(visit=visit, at=at)
    add_event(visit, before=before, at=at, by=by, note=note)
    if is_other or (visit.planned_start is not None and visit.van_id != van_before):
        tell_visit_event(visit=visit, before=before, at=at)
    return visit


def add_event(visit: Visit, *, before: str, at: datetime, by: User | None, note: str) -> VisitEvent:
    """One line of history, from `before` to the visit's present state."""
    event = VisitEvent(
        business_id=visit.business_id,
        visit=visit,
        before=before,
        after=visit.state,
        at=at,
        by=by,
        note=note[:300],
    )
    event.full_clean()
    event.save()
    return event
