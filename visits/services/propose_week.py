"""Of an evening the coming days are planned, for whoever wants it: as a proposal, never into the diary."""

from collections.abc import Iterator
from datetime import date, datetime, timedelta

from django.db import transaction

from trimops.accounts.models import Business
from trimops.kernel.clock import local_day, monday_of
from trimops.kernel.scope import Scope
from visits.domain.planning.problem_news import has_news
from visits.models import WeekPlan, WeekPlanState
from visits.selectors.week_problem import visits_to_plan, week_problem
from visits.services.ask_week_plan import NothingToPlan, ask_week_plan

FRIDAY = 4


@transaction.atomic
def propose_week(*, business: Business, at: datetime) -> WeekPlan | None:
    """Ask for a plan of the days from tomorrow on, if there is something to plan that nobody is at; None else.

    That is: a visit without an hour, or a plan in the diary under which the week has changed. Nothing is asked twice
    for the same work, also where the proposal was dropped; what a person asked for, and has not taken or dropped, is
    left alone. One week at a time: the next one, from Friday on, once the rest of this one needs nothing.
    """
    if not business.proposes_weeks:
        return None
    today = local_day(at, business.zone)
    for monday in _mondays(today):
        if plan := _proposed(business, monday, at):
            return plan
    return None


def _mondays(today: date) -> Iterator[date]:
    this, tomorrow = monday_of(today), today + timedelta(days=1)
    if monday_of(tomorrow) == this:
        yield this
    if today.weekday() >= FRIDAY:
        yield this + timedelta(days=7)


def _proposed(business: Business, monday: date, at: datetime) -> WeekPlan | None:
    newest = (
        WeekPlan.objects.within(Scope(business.pk)).filter(monday=monday).order_by("asked_at", "id").last()
    )
    if newest is not None and _is_somebodys(newest):
        return None
    if not _needs_plan(business, monday, newest, at):
        return None
    try:
        return ask_week_plan(business=business, monday=monday, at=at, by=None)
    except NothingToPlan:
        return None


def _is_somebodys(plan: WeekPlan) -> bool:
    """It is being thought about, or a person asked for it and has neither taken nor dropped it."""
    if plan.state == WeekPlanState.THINKING:
        return True
    return plan.state == WeekPlanState.PROPOSED and plan.asked_by_id is not None


def _needs_plan(business: Business, monday: date, newest: WeekPlan | None, at: datetime) -> bool:
    wanted = any(visit.planned_start is None for visit in visits_to_plan(business, monday))
    if newest is None:
        return wanted
    if not wanted and newest.state != WeekPlanState.ACCEPTED:
        return False
    tomorrow = local_day(at, business.zone) + timedelta(days=1)
    return has_news(newest.problem, newest.plan, week_problem(business, monday, at), tomorrow)
