"""This week: the plan as ribbons and maps, asking for one, watching it being made, accepting it."""

from datetime import date, time, timedelta

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseBase, JsonResponse
from django.shortcuts import redirect
from django.urls import reverse

from trimops.accounts.roles import STAFF, Role
from trimops.kernel.clock import at_local, local_day, monday_of
from trimops.web.scoped_page import ScopedPage
from visits.domain.visit_states import VisitState
from visits.models import Visit, WeekPlan, WeekPlanState
from visits.selectors.week_view import WeekView, week_view
from visits.services.accept_week_plan import accept_week_plan
from visits.services.ask_week_plan import ask_week_plan

PLANNERS = frozenset({Role.OWNER, Role.TRIMMER})
SHOWN = [WeekPlanState.PROPOSED, WeekPlanState.ACCEPTED]


class ThisWeekPage(ScopedPage):
    """The newest plan of a week, or what there is to plan."""

    roles = STAFF
    template = "visits/this_week.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        monday = self._monday(request.GET.get("week", ""))
        plans = WeekPlan.objects.within(self.scope).filter(monday=monday, state__in=SHOWN)
        week_plan = plans.order_by("-asked_at").first()
        view = week_view(self.seat.business, week_plan) if week_plan else None
        placed = _placed(view)
        waiting = self._wanted(monday)
        return self.show(
            {
                "monday": monday,
                "sunday": monday + timedelta(days=6),
                "before": monday - timedelta(days=7),
                "after": monday + timedelta(days=7),
                "week_plan": week_plan,
                "view": view,
                "is_proposed": bool(week_plan and week_plan.state == WeekPlanState.PROPOSED),
                "in_diary": self._in_diary(monday, placed),
                "wanted": [visit for visit in waiting if visit.pk not in placed | _left_out(view)],
                "wanted_count": len(waiting),
                "left_out_count": len(_left_out(view)),
                "may_plan": self.seat.role in PLANNERS,
            }
        )

    def _wanted(self, monday: date) -> list[Visit]:
        rows = Visit.objects.within(self.scope).in_state(VisitState.WANTED).due_by(monday + timedelta(days=6))
        return list(rows.select_related("farm").order_by("due_until", "id")[:60])

    def _in_diary(self, monday: date, placed: set[int]) -> list[Visit]:
        """Visits that have their hour in this week otherwise than by the plan shown."""
        zone = self.seat.business.zone
        first, last = (at_local(monday + timedelta(days=days), time(0), zone) for days in (0, 7))
        rows = Visit.objects.within(self.scope).filter(planned_start__gte=first, planned_start__lt=last)
        rows = rows.exclude(pk__in=placed).exclude(state=VisitState.CALLED_OFF)
        return list(rows.select_related("farm").order_by("planned_start", "id"))

    def _monday(self, text: str) -> date:
        try:
            return monday_of(date.fromisoformat(text))
        except ValueError:
            return monday_of(local_day(self.now, self.seat.business.zone))


def _placed(view: WeekView | None) -> set[int]:
    """Keys of the visits that the plan shown gives an hour."""
    return {visit.pk for day in view.days for s in day.shifts for visit in s.visits} if view else set()


def _left_out(view: WeekView | None) -> set[int]:
    return {item.visit.pk for item in view.left_out} if view else set()


class PlanWeekPage(ScopedPage):
    """Ask for a plan of the week."""

    roles = PLANNERS

    def post(self, request: HttpRequest, week: str) -> HttpResponseBase:
        try:
            monday = monday_of(date.fromisoformat(week))
        except ValueError:
            raise Http404 from None
        plan = ask_week_plan(business=self.seat.business, monday=monday, at=self.now, by=self.seat.user)
        return redirect("week_plan", plan.pk)


class WeekPlanPage(ScopedPage):
    """How far the thinking is; once done, the week itself."""

    roles = STAFF
    template = "web/progress.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        plan = self.fetch(WeekPlan, pk)
        if plan.state not in (WeekPlanState.THINKING, WeekPlanState.FAILED):
            return redirect(week_address(plan))
        failed = plan.state == WeekPlanState.FAILED
        return self.show(
            {
                "heading": f"{'Not planned: the' if failed else 'Planning the'} week of {plan.monday:%-d %B}",
                "state_url": reverse("week_plan_state", args=[plan.pk]),
                "percent": plan.percent,
                "text": plan.failure if failed else plan.progress_text,
                "failed": failed,
                "again_url": week_address(plan),
            }
        )


class WeekPlanProgress(ScopedPage):
    """The same as figures, for the progress bar."""

    roles = STAFF

    def get(self, request: HttpRequest, pk: int) -> JsonResponse:
        plan = self.fetch(WeekPlan, pk)
        failed = plan.state == WeekPlanState.FAILED
        done = plan.state not in (WeekPlanState.THINKING, WeekPlanState.FAILED)
        text = plan.failure if failed else plan.progress_text
        url = week_address(plan) if done else ""
        return JsonResponse(
            {"percent": plan.percent, "text": text, "done": done, "failed": failed, "url": url}
        )


class AcceptWeekPlanPage(ScopedPage):
    roles = PLANNERS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        plan = accept_week_plan(week_plan=self.fetch(WeekPlan, pk), at=self.now, by=self.seat.user)
        messages.success(request, "The week is in the diary. Confirm each hour with its farm.")
        return redirect(week_address(plan))


def week_address(plan: WeekPlan) -> str:
    """The page of the week that the plan is for."""
    return f"{reverse('this_week')}?week={plan.monday.isoformat()}"
