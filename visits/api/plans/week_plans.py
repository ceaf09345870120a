"""Plans of weeks: asked for, watched while they are made, accepted, brought back."""

from django.http import HttpResponse
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from trimops.accounts.actions import Action
from trimops.api.kinds import FileApi, RowApi, RowsApi, StepApi, ToldApi
from trimops.api.op import Filter, Op, Said
from trimops.api.rows import MOST_ID
from trimops.tenancy.querysets import TenantQuerySet
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer
from visits.api.plans.plan_shown import PlanShown, WholePlan, WholePlanShown
from visits.api.plans.problem_shown import ProblemShown
from visits.api.visits import day_word
from visits.api.week_days import week_in_address
from visits.documents.day_sheet import day_sheet
from visits.models import WeekPlan, WeekPlanState
from visits.selectors.day_sheet_content import day_sheet_content
from visits.selectors.week_problem import week_problem
from visits.services.accept_week_plan import accept_week_plan
from visits.services.ask_proof import ask_proof
from visits.services.ask_week_plan import ask_week_plan
from visits.services.bring_back_plan import bring_back_plan
from visits.services.drop_week_plan import drop_week_plan
from visits.services.stop_thinking import stop_thinking

HEAVY = ("problem", "plan", "travel", "reasons", "cost_history")
MOST_AGREED = 200


class FarmsAgreedWord(serializers.Serializer):  # type: ignore[type-arg]
    """Confirmed visits that may move, because their farms said yes."""

    agreed = serializers.ListField(
        child=serializers.IntegerField(min_value=1, max_value=MOST_ID), max_length=MOST_AGREED, default=list
    )


class PlansApi(RowsApi[WeekPlan]):
    """Plans of all weeks, those set aside among them."""

    model = WeekPlan
    related = ("asked_by",)
    ops = {
        "get": Op(
            Action.SEE_WEEKS,
            "list_plans",
            "The week plans",
            shows=PlanShown,
            lists=True,
            orders={"asked_at": ("asked_at", "id"), "monday": ("monday", "id")},
            filters={
                "monday": Filter(day_word("The Monday of the week."), "monday"),
                "state": Filter(serializers.ChoiceField(WeekPlanState.choices), "state"),
            },
        )
    }

    def rows(self) -> TenantQuerySet[WeekPlan]:
        return super().rows().defer(*HEAVY)


class WeekPlansApi(PlansApi):
    """Plans of one week, named by its Monday (any of its days will do). Asking for one puts down what is wanted,
    planned and confirmed as it stands now, and has it thought about: the answer comes at once (202), and Location says
    where to look how far it is. It changes nothing in the diary until it is accepted. Refused where there is nothing to
    plan (nothing_to_plan)."""

    costs = {"post": Cost.PLAN}
    ops = {
        "get": Op(
            Action.SEE_WEEKS,
            "list_week_plans",
            "The plans of a week",
            shows=PlanShown,
            lists=True,
            orders={"asked_at": ("asked_at", "id")},
        ),
        "post": Op(
            Action.PLAN_WEEKS, "ask_plan", "Ask for a plan", shows=PlanShown, status=202, repeats=True
        ),
    }

    def rows(self) -> TenantQuerySet[WeekPlan]:
        return super().rows().filter(monday=week_in_address(self.kwargs["week"]))

    def _add(self) -> Response:
        monday = week_in_address(self.kwargs["week"])
        row = ask_week_plan(business=self.seat.business, monday=monday, at=self.now, by=self.seat.user)
        return self.answer(self.show(row), location=f"/api/v1/plans/{row.pk}/")


class WeekProblemApi(ToldApi):
    """The week as the planner is given it, as it stands now (format trimops-week-problem/1): what `manage.py
    solve_week` reads from a file."""

    ops = {"get": Op(Action.SEE_WEEKS, "read_week_problem", "What there is to plan", shows=ProblemShown)}

    def told(self) -> dict[str, object]:
        return week_problem(self.seat.business, week_in_address(self.kwargs["week"]), self.now)


class PlanApi(RowApi[WeekPlan]):
    """One plan: while it is thought about, how far that is; once done, the week itself, what it leaves out and why,
    and what it costs. Every plan was audited by code that shares nothing with the planner."""

    model = WeekPlan
    related = ("asked_by", "business")
    ops = {"get": Op(Action.SEE_WEEKS, "read_plan", "One week plan", shows=WholePlanShown)}

    def get(self, request: Request, **kwargs: object) -> Response:
        return self.answer(self.show(WholePlan(self.row(), self.seat.business)))


class PlanProblemApi(ToldApi):
    """What the plan was made of: bases, farms, minutes and metres between them, the vans' days, the visits."""

    ops = {"get": Op(Action.SEE_WEEKS, "read_plan_problem", "What the plan was made of", shows=ProblemShown)}

    def told(self) -> Said:
        problem: Said = self.fetch(WeekPlan, self.kwargs["pk"]).problem
        return problem


class PlanStepApi(StepApi[WeekPlan]):
    """What is done with a plan."""

    model = WeekPlan
    related = ("business", "asked_by")


def step(name: str, says: str, takes: type[serializers.Serializer] | None = None) -> dict[str, Op]:  # type: ignore[type-arg]
    """The one operation of a step of a plan."""
    return {"post": Op(Action.PLAN_WEEKS, name, says, takes=takes, shows=PlanShown, repeats=True)}


class StopThinkingApi(PlanStepApi):
    """Enough: it keeps the best week so far. A plan that is thought about no more is left as it is."""

    ops = step("stop_thinking", "Stop thinking")

    def act(self, row: WeekPlan, content: Said) -> WeekPlan:
        return stop_thinking(week_plan=row, at=self.now)


class ProvePlanApi(PlanStepApi):
    """Has worked out how much cheaper anybody could drive this week; `cost.bound` of the plan says it then. Refused for
    a week that is too large for it, or without a plan (not_to_be_proven)."""

    costs = {"post": Cost.PLAN}
    ops = step("prove_plan", "Prove how good it is")

    def act(self, row: WeekPlan, content: Said) -> WeekPlan:
        return ask_proof(week_plan=row)


class AcceptPlanApi(PlanStepApi):
    """The plan becomes the diary: its visits get van and hour, planned ones that it leaves out are wanted again.
    Confirmed visits move only where the plan asks for it and `agreed` names them (promise_needs_yes). Refused where the
    week has changed since (plan_is_stale): plan it again."""

    ops = step("accept_plan", "Accept the plan", FarmsAgreedWord)

    def act(self, row: WeekPlan, content: Said) -> WeekPlan:
        return accept_week_plan(week_plan=row, at=self.now, by=self.seat.user, agreed=content["agreed"])


class BringBackPlanApi(PlanStepApi):
    """An earlier plan is proposed again. Refused where an hour was promised or locked since that does not fit it
    (plan_cannot_come_back)."""

    ops = step("bring_back_plan", "Bring it back")

    def act(self, row: WeekPlan, content: Said) -> WeekPlan:
        return bring_back_plan(week_plan=row, at=self.now, by=self.seat.user)


class DropPlanApi(PlanStepApi):
    """A proposal is set aside; the diary stays as it is."""

    ops = step("drop_plan", "Drop the plan")

    def act(self, row: WeekPlan, content: Said) -> WeekPlan:
        return drop_week_plan(week_plan=row, at=self.now, by=self.seat.user)


class DaySheetApi(FileApi):
    """The sheet for the dashboard of one van's day. `shift` is as the plan names it."""

    costs = {"get": Cost.PAPER}
    ops = {"get": Op(Action.SEE_WEEKS, "print_day_sheet", "A day sheet, printed", media="application/pdf")}

    def file(self) -> HttpResponse:
        plan, shift = self.fetch(WeekPlan, self.kwargs["pk"], "business"), self.kwargs["shift"]
        return pdf_answer(day_sheet(day_sheet_content(plan, shift, self.now)), f"day-{shift}")
