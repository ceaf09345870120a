"""A plan of a week: asked for, watched while it is made, stopped, accepted, brought back."""

from datetime import date

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponseBase, JsonResponse
from django.shortcuts import redirect
from django.urls import reverse

from trimops.accounts.actions import Action
from trimops.kernel.clock import monday_of
from trimops.web.page_rates import Cost
from trimops.web.scoped_page import ScopedPage
from visits.models import WeekPlan, WeekPlanState
from visits.selectors.plan_story import cost_drawing
from visits.services.accept_week_plan import accept_week_plan
from visits.services.ask_proof import ask_proof
from visits.services.ask_week_plan import ask_week_plan
from visits.services.bring_back_plan import bring_back_plan
from visits.services.stop_thinking import LONGEST_ANSWER, stop_thinking
from visits.web.week_pages import week_address


class PlanWeekPage(ScopedPage):
    """Ask for a plan of the week."""

    does = Action.PLAN_WEEKS
    costs = {"post": Cost.PLAN}

    def post(self, request: HttpRequest, week: str) -> HttpResponseBase:
        try:
            monday = monday_of(date.fromisoformat(week))
        except ValueError:
            raise Http404 from None
        plan = ask_week_plan(business=self.seat.business, monday=monday, at=self.now, by=self.seat.user)
        return redirect("week_plan", plan.pk)


class WeekPlanPage(ScopedPage):
    """How far the thinking is, the cost falling; once done, the week itself."""

    does = Action.SEE_WEEKS
    template = "visits/week_thinking.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        plan = self.fetch(WeekPlan, pk)
        if plan.state not in (WeekPlanState.THINKING, WeekPlanState.FAILED):
            return redirect(week_address(plan))
        failed = plan.state == WeekPlanState.FAILED
        return self.show(
            {
                "heading": f"{'Not planned: the' if failed else 'Planning the'} week of {plan.monday:%-d %B}",
                "plan": plan,
                "state_url": reverse("week_plan_state", args=[plan.pk]),
                "percent": plan.percent,
                "text": plan.failure if failed else plan.progress_text,
                "failed": failed,
                "again_url": week_address(plan),
                "chart": cost_drawing(plan, self.seat.business),
                "may_stop": self.seat.allows(Action.PLAN_WEEKS) and self._hears_nothing(plan),
            }
        )

    def _hears_nothing(self, plan: WeekPlan) -> bool:
        """Nobody has told it to stop, or so long ago that it must be gone."""
        told = plan.stop_asked_at
        return plan.state == WeekPlanState.THINKING and (told is None or self.now - told > LONGEST_ANSWER)


class WeekPlanProgress(ScopedPage):
    """The same as figures, for the progress bar; `chart` is the drawing (SVG) of how the cost fell."""

    does = Action.SEE_WEEKS

    def get(self, request: HttpRequest, pk: int) -> JsonResponse:
        plan = self.fetch(WeekPlan, pk)
        failed = plan.state == WeekPlanState.FAILED
        done = plan.state not in (WeekPlanState.THINKING, WeekPlanState.FAILED)
        return JsonResponse(
            {
                "percent": plan.percent,
                "text": plan.failure if failed else plan.progress_text,
                "done": done,
                "failed": failed,
                "url": week_address(plan) if done else "",
                "chart": cost_drawing(plan, self.seat.business),
            }
        )


class StopThinkingPage(ScopedPage):
    """Enough: keep the best week so far."""

    does = Action.PLAN_WEEKS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        plan = stop_thinking(week_plan=self.fetch(WeekPlan, pk), at=self.now)
        return redirect("week_plan", plan.pk)


class AcceptWeekPlanPage(ScopedPage):
    does = Action.PLAN_WEEKS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        plan = accept_week_plan(week_plan=self.fetch(WeekPlan, pk), at=self.now, by=self.seat.user)
        messages.success(request, "The week is in the diary. Confirm each hour with its farm.")
        return redirect(week_address(plan))


class BringBackPlanPage(ScopedPage):
    """The way back: an earlier plan is proposed again."""

    does = Action.PLAN_WEEKS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        plan = bring_back_plan(week_plan=self.fetch(WeekPlan, pk, "business"), at=self.now, by=self.seat.user)
        messages.success(request, "The earlier plan is back. The other one is kept among the earlier plans.")
        return redirect(week_address(plan))


class ProvePlanPage(ScopedPage):
    """How much cheaper could anybody drive this week? Worked out in the background."""

    does = Action.PLAN_WEEKS
    costs = {"post": Cost.PLAN}

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        plan = ask_proof(week_plan=self.fetch(WeekPlan, pk))
        messages.success(request, "It is being worked out, for a minute. Open this page again to see it.")
        return redirect(week_address(plan))
