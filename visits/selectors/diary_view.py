"""A week without a plan, laid out as the diary has it."""

from datetime import date, datetime, timedelta
from decimal import Decimal

from trimops.accounts.models import Business
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.models import Van
from visits.selectors.diary_rows import diary_shifts
from visits.selectors.plan_rows import PlanRows, axis_of
from visits.selectors.public_holidays import holidays_between
from visits.selectors.week_board import board_of_rows
from visits.selectors.week_days import chosen_day, days_of
from visits.selectors.week_view import WeekView


def diary_view(
    business: Business, monday: date, now: datetime, chosen: date | None = None
) -> WeekView | None:
    """None where no van has a visit in that week. Two queries."""
    scope = Scope(business.pk)
    vans = Van.objects.within(scope).select_related("business").in_bulk()
    rows = PlanRows(business.zone, vans, {}, {}, {}, {}, now)
    shifts = sorted(diary_shifts(scope, monday, rows, ()), key=lambda shift: (shift.day, shift.id))
    if not shifts:
        return None
    days, nothing = (
        days_of(shifts, holidays_between(business, monday, monday + timedelta(days=6))),
        Decimal(0),
    )
    placed = frozenset(stop.visit.pk for shift in shifts for stop in shift.stops)
    shown = chosen_day(days, (chosen, local_day(now, business.zone)))
    return WeekView(days, board_of_rows(shifts, axis_of(shifts)), shown, [], nothing, nothing, placed)
