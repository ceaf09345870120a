"""The coming week is planned in this process, audited and taken into the diary."""

from dataclasses import dataclass
from datetime import date, datetime

from trimops.kernel.errors import RuleBroken
from trimops.portal.demo.build_people import Crew
from visits.domain.planning.audit import audit_week
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import WeekPlan, WeekPlanState
from visits.selectors.week_problem import week_problem
from visits.services.accept_week_plan import accept_week_plan
from visits.services.think_week_plan import think_week_plan


class WeekNotPlanned(RuleBroken):
    """No plan came of it; the message says why."""

    code = "week_not_planned"


@dataclass(frozen=True)
class PlannedWeek:
    """The accepted plan with its two documents and what the audit said of them."""

    week_plan: WeekPlan
    problem: dict[str, object]
    plan: dict[str, object]
    breaches: list[str]


def plan_the_week(crew: Crew, monday: date, at: datetime, seconds: float) -> PlannedWeek:
    """Put the problem down, think `seconds` long, audit, accept. WeekNotPlanned when it cannot be done."""
    row = WeekPlan(
        business=crew.business,
        monday=monday,
        problem=week_problem(crew.business, monday, at),
        asked_at=at,
        asked_by=crew.people["owner"],
    )
    row.full_clean()
    row.save()
    row = think_week_plan(week_plan=row, limits=SolveLimits(seconds=seconds), at=at)
    if row.state != WeekPlanState.PROPOSED or row.plan is None:
        raise WeekNotPlanned(f"The week could not be planned: {row.failure}")
    breaches = audit_week(row.problem, row.plan)
    if breaches:
        raise WeekNotPlanned("The plan breaks rules: " + "; ".join(breaches))
    row = accept_week_plan(week_plan=row, at=at, by=crew.people["owner"])
    return PlannedWeek(row, row.problem, row.plan or {}, breaches)
