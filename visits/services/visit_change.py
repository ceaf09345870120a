"""The one door through which a visit changes state: guard, lock, history."""

from datetime import datetime

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.domain.visit_states import VisitState, may_move
from visits.models import Visit, VisitEvent


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
    """Store the visit in its new state, one higher in its calendar sequence, with a line of history."""
    before = visit.state
    visit.state = to.value
    visit.changed_at = at
    visit.calendar_sequence += 1
    visit.full_clean()
    visit.save()
    add_event(visit, before=before, at=at, by=by, note=note)
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
