"""This week: the plan as a board of days, the map beside it, and what it leaves out."""

from datetime import date, time, timedelta

from django.http import HttpRequest, HttpResponse
from django.urls import reverse

from trimops.accounts.actions import Action
from trimops.errands.selectors.stuck_errands import stuck_rows
from trimops.kernel.clock import at_local, local_day, monday_of
from trimops.web.scoped_page import ScopedPage
from visits.domain.visit_states import VisitState
from visits.models import Visit, WeekPlan, WeekPlanState
from visits.selectors.day_arrivals import DayArrivals, arrivals_of
from visits.selectors.diary_view import diary_view
from visits.selectors.plan_in_force import earlier_plans, plan_in_force
from visits.selectors.plan_reasons import reasons_of
from visits.selectors.plan_story import PlanStory, plan_story
from visits.selectors.public_holidays import holidays_between
from visits.selectors.travel_note import travel_note
from visits.selectors.van_absences import Absence, own_appointments
from visits.selectors.week_view import WeekView, week_view


class ThisWeekPage(ScopedPage):
    """The plan of a week that is worked on, or what there is to plan."""

    does = Action.SEE_WEEKS
    template = "visits/this_week.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        monday = monday_of(self._day("week") or local_day(self.now, self.seat.business.zone))
        plan = plan_in_force(self.scope, monday)
        business, day = self.seat.business, self._day("day")
        view = (
            week_view(business, plan, self.now, day) if plan else diary_view(business, monday, self.now, day)
        )
        placed = view.placed if view else frozenset()
        left = {item.visit.pk for item in view.left_out} if view else set()
        waiting = self._wanted(monday)
        return self.show(
            {
                "monday": monday,
                "sunday": monday + timedelta(days=6),
                "before": monday - timedelta(days=7),
                "after": monday + timedelta(days=7),
                "in_diary": self._in_diary(monday, placed | left),
                "in_diary_count": len(placed) if plan is None else 0,
                "wanted": [visit for visit in waiting if visit.pk not in placed | left],
                "wanted_count": len(waiting),
                "may_plan": self.seat.allows(Action.PLAN_WEEKS),
                "stuck_count": stuck_rows(self.scope).count() if self.seat.allows(Action.MEND_STUCK) else 0,
                "holidays": holidays_between(business, monday, monday + timedelta(days=6)).items(),
                "works_holidays": business.works_holidays,
                "appointments": self._appointments(monday),
                **self._of_plan(plan, view),
            }
        )

    def _appointments(self, monday: date) -> list[Absence]:
        """When own calendars keep a van in."""
        by_van = own_appointments(self.seat.business, monday, monday + timedelta(days=6))
        return sorted((each for found in by_van.values() for each in found), key=lambda each: each.since)

    def _of_plan(self, plan: WeekPlan | None, view: WeekView | None) -> dict[str, object]:
        """What the page says of the plan shown."""
        story: PlanStory | None = plan_story(plan, self.seat.business) if plan else None
        return {
            "week_plan": plan,
            "view": view,
            "story": story,
            "travel_note": travel_note(plan, self.seat.business.zone),
            "is_proposed": bool(plan and plan.state == WeekPlanState.PROPOSED),
            "earlier": earlier_plans(self.scope, plan) if plan else [],
            "reasons": reasons_of(plan) if plan else None,
            "arrivals_today": self._arrivals(view) if view else [],
        }

    def _arrivals(self, view: WeekView) -> list[DayArrivals]:
        """When today's farms are likely reached, where the day chosen is today."""
        chosen = view.chosen.view if view.chosen else None
        if chosen is None or chosen.day != local_day(self.now, self.seat.business.zone):
            return []
        vans = [shift.van for shift in chosen.shifts if shift.stops]
        found = (arrivals_of(self.seat.business, van, chosen.day, self.now) for van in vans)
        return [arrivals for arrivals in found if arrivals is not None]

    def _wanted(self, monday: date) -> list[Visit]:
        rows = Visit.objects.within(self.scope).in_state(VisitState.WANTED).due_by(monday + timedelta(days=6))
        return list(rows.select_related("farm").order_by("due_until", "id")[:60])

    def _in_diary(self, monday: date, placed: frozenset[int]) -> list[Visit]:
        """Visits that have their hour in this week otherwise than by the plan shown."""
        zone = self.seat.business.zone
        first, last = (at_local(monday + timedelta(days=days), time(0), zone) for days in (0, 7))
        rows = Visit.objects.within(self.scope).filter(planned_start__gte=first, planned_start__lt=last)
        rows = rows.exclude(pk__in=placed).exclude(state=VisitState.CALLED_OFF)
        return list(rows.select_related("farm").order_by("planned_start", "id"))

    def _day(self, name: str) -> date | None:
        """The day asked for in the address; None where there is none that can be read."""
        try:
            return date.fromisoformat(self.request.GET.get(name, ""))
        except ValueError:
            return None


def week_address(plan: WeekPlan, day: date | None = None) -> str:
    """The page of the week that the plan is for, a day of it chosen."""
    address = f"{reverse('this_week')}?week={plan.monday.isoformat()}"
    return f"{address}&day={day.isoformat()}" if day else address
