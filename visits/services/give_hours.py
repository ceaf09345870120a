"""Planned visits get other hours, all at once."""

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta

from trimops.accounts.models import User
from visits.domain.visit_states import VisitState
from visits.models import Van
from visits.selectors.offer_again import NewHour
from visits.services.visit_change import VisitCannotMove, keep_change


def give_hours(
    *, hours: Sequence[NewHour], vans: Mapping[int, Van], note: str, at: datetime, by: User
) -> None:
    """Each its van and its hour, whatever stands there: whoever calls has seen that together they fit.

    Call inside a transaction. VisitCannotMove when one of them is not merely planned any more.
    """
    for hour in sorted(hours, key=lambda each: each.visit.pk):
        row = hour.visit.locked()
        if row.visit_state is not VisitState.PLANNED:
            raise VisitCannotMove("A visit that was to move is not merely planned any more: ask again.")
        row.van, row.planned_start = vans[hour.van], hour.start
        row.planned_finish = hour.start + timedelta(minutes=row.expected_minutes)
        keep_change(row, VisitState.PLANNED, at=at, by=by, note=note)
