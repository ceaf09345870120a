"""A week planned again: how far it is, old against new, accept or drop; and any two plans beside each other."""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseBase, JsonResponse
from django.shortcuts import redirect
from django.urls import reverse

from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from visits.domain.messages.message_kinds import ABOUT_HOUR
from visits.models import Visit, WeekPlan, WeekPlanState
from visits.selectors.messages.rules_in_use import any_on
from visits.selectors.plan_comparison import change_of_plan, minor, plan_against, price_words
from visits.services.accept_week_plan import accept_week_plan
from visits.services.drop_week_plan import drop_week_plan
from visits.services.tell_hour import tell_hour
from visits.web.week_pages import week_address

WAITING = (WeekPlanState.THINKING, WeekPlanState.FAILED)


class ReplanPage(ScopedPage):
    """How far the thinking is; once done, what the new plan changes."""

    does = Action.SEE_WEEKS
    template = "visits/replan.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        plan = self.fetch(WeekPlan, pk)
        if plan.change is None:
            raise Http404
        if plan.state in WAITING:
            return self._waiting(plan)
        price = price_words(plan)
        return self.show(
            {
                "plan": plan,
                "compared": change_of_plan(self.seat.business, plan),
                "price": price,
                "price_visit": minor(price.visit) if price else None,
                "price_told": minor(price.told_hour) if price else None,
                "is_open": plan.state == WeekPlanState.PROPOSED,
                "is_accepted": plan.state == WeekPlanState.ACCEPTED,
                "goes_alone": any_on(self.scope, ABOUT_HOUR),
                "may_plan": self.seat.allows(Action.PLAN_WEEKS),
                "week_url": week_address(plan),
            }
        )

    def _waiting(self, plan: WeekPlan) -> HttpResponse:
        failed = plan.state == WeekPlanState.FAILED
        words: dict[str, object] = {
            "heading": "Not planned again" if failed else "Looking for the least change",
            "state_url": reverse("replan_state", args=[plan.pk]),
            "percent": plan.percent,
            "text": plan.failure if failed else f"{plan.because}. {plan.progress_text}",
            "failed": failed,
            "again_url": week_address(plan),
        }
        return self.show(words, template="web/progress.html")


class ReplanProgress(ScopedPage):
    """The same as figures, for the progress bar."""

    does = Action.SEE_WEEKS

    def get(self, request: HttpRequest, pk: int) -> JsonResponse:
        plan = self.fetch(WeekPlan, pk)
        failed, done = plan.state == WeekPlanState.FAILED, plan.state not in WAITING
        text = plan.failure if failed else plan.progress_text
        url = reverse("replan", args=[plan.pk]) if done else ""
        return JsonResponse(
            {"percent": plan.percent, "text": text, "done": done, "failed": failed, "url": url}
        )


class AcceptReplanPage(ScopedPage):
    """The new plan becomes the diary; confirmed visits move where they are ticked."""

    does = Action.PLAN_WEEKS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        plan = self.fetch(WeekPlan, pk)
        agreed = [int(key) for key in request.POST.getlist("agreed") if key.isdecimal()]
        accept_week_plan(week_plan=plan, at=self.now, by=self.seat.user, agreed=agreed)
        messages.success(request, "The new plan is in the diary. Now tell the farms whose hour has changed.")
        return redirect("replan", plan.pk)


class DropReplanPage(ScopedPage):
    """The diary stays as it is."""

    does = Action.PLAN_WEEKS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        plan = drop_week_plan(week_plan=self.fetch(WeekPlan, pk), at=self.now, by=self.seat.user)
        messages.success(request, "The plan is dropped; the diary stays as it is.")
        return redirect(week_address(plan))


class FarmToldPage(ScopedPage):
    """Somebody has told the farm its hour."""

    does = Action.KEEP_VISITS

    def post(self, request: HttpRequest, pk: int, visit_pk: int) -> HttpResponseBase:
        plan = self.fetch(WeekPlan, pk)
        visit = tell_hour(visit=self.fetch(Visit, visit_pk, "farm"), at=self.now, by=self.seat.user)
        messages.success(request, f"{visit.farm} counts on this hour now.")
        return redirect(f"{reverse('replan', args=[plan.pk])}#tell")


class PlanAgainstPage(ScopedPage):
    """Two plans of one week: what the first changes against the other."""

    does = Action.SEE_WEEKS
    template = "visits/plan_against.html"

    def get(self, request: HttpRequest, pk: int, other: int) -> HttpResponse:
        plan, before = self.fetch(WeekPlan, pk, "asked_by"), self.fetch(WeekPlan, other, "asked_by")
        if plan.plan is None or before.plan is None or plan.monday != before.monday:
            raise Http404
        return self.show(
            {
                "plan": plan,
                "before": before,
                "compared": plan_against(self.seat.business, plan, before),
                "week_url": week_address(plan),
            }
        )
