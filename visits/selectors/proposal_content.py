"""A proposed plan as the values its mail is written from."""

from datetime import datetime

from visits.documents.proposal_mail import LeftOutVisit, Proposal, ProposedDay, ProposedVisit
from visits.models import WeekPlan
from visits.selectors.week_view import week_view


def proposal_content(week_plan: WeekPlan, now: datetime, address: str) -> Proposal:
    """What the plan has ahead of the aware instant `now`. A fixed number of queries."""
    business = week_plan.business
    view = week_view(business, week_plan, now)
    days = [
        ProposedDay(
            shift.day,
            shift.van.name,
            [
                ProposedVisit(
                    stop.start.astimezone(business.zone), stop.visit.farm.name, stop.visit.head_count
                )
                for stop in shift.stops
            ],
        )
        for day in view.days
        for shift in day.shifts
        if shift.stops and not shift.is_diary and shift.ends > now
    ]
    left = [
        LeftOutVisit(item.visit.farm.name, item.visit.head_count, item.visit.due_until, item.detail)
        for item in view.left_out
    ]
    return Proposal(week_plan.monday, days, left, address)
