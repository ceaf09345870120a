"""By when a farm that rings up is to be seen."""

from datetime import date, timedelta

from visits.domain.mobility import MobilityScale, due_range, urgency_of
from visits.domain.visit_states import VisitReason

URGENT_DAYS = 2
RECHECK_DAYS = 7
ROUTINE_DAYS = 28


def asked_until(
    reason: VisitReason, today: date, scale: MobilityScale | None = None, score: int | None = None
) -> date:
    """The last day on which it is not late, counted from `today`, the day somebody asks.

    A lame cow by her score (`due_range`): the same day, or within 48 hours. An urgent visit without a score as one
    within 48 hours, a re-check in a week, a routine visit in four (common practice, no source).
    """
    days = {VisitReason.URGENT: URGENT_DAYS, VisitReason.RECHECK: RECHECK_DAYS}.get(reason, ROUTINE_DAYS)
    last = today + timedelta(days=days)
    if scale is None or score is None:
        return last
    by_score = due_range(urgency_of(scale, score), today, ROUTINE_DAYS).last
    return min(last, by_score)
