"""The planner thinks; how far it is can be read meanwhile. Run as a job."""

import json
from collections import deque
from concurrent.futures import ThreadPoolExecutor, wait
from datetime import datetime

from visits.domain.planning.plan_week_problem import PlanBreaksRules, plan_week_problem
from visits.domain.planning.problem_faults import ProblemFaults
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import WeekPlan, WeekPlanState

TELL_SECONDS = 0.5


def think_week_plan(*, week_plan: WeekPlan, limits: SolveLimits, at: datetime) -> WeekPlan:
    """Solve, audit and propose. Running it again on a plan that is already proposed changes nothing.

    Not one transaction: its steps are to be seen from outside while it thinks.
    """
    if week_plan.state != WeekPlanState.THINKING:
        return week_plan

    try:
        document = _thought_out(week_plan, limits)
    except (ProblemFaults, PlanBreaksRules) as fault:
        return _fail(week_plan, str(fault) or "; ".join(getattr(fault, "faults", [])), at)
    except Exception:  # because: whoever watches must not wait for ever; what broke goes on to the log
        _fail(week_plan, "The planner broke down. Ask for the plan again; the log says more.", at)
        raise
    _set_others_aside(week_plan)
    week_plan.plan, week_plan.state, week_plan.finished_at = document, WeekPlanState.PROPOSED, at
    week_plan.percent, week_plan.progress_text = 100, "Done"
    week_plan.save()
    return week_plan


def _thought_out(week_plan: WeekPlan, limits: SolveLimits) -> dict[str, object]:
    """The plan document. The search has threads of its own and tells its progress from them; only this one writes.

    A search thread that wrote would open a database connection that nobody closes, and would wait for its lock.
    """
    heard: deque[tuple[float, float]] = deque(maxlen=1)
    with ThreadPoolExecutor(1) as hand:
        run = hand.submit(
            plan_week_problem,
            json.dumps(week_plan.problem),
            limits=limits,
            progress=lambda seconds, cost: heard.append((seconds, cost)),
        )
        while not wait([run], timeout=TELL_SECONDS).done:
            if heard:
                _tell(week_plan, *_in_words(*heard.pop(), limits))
        return run.result()[0]


def _in_words(seconds: float, cost: float, limits: SolveLimits) -> tuple[int, str]:
    share = min(99, round(100 * seconds / limits.seconds)) if limits.iterations is None else 50
    return share, f"Best so far costs {cost / 100:,.2f}"


def _tell(week_plan: WeekPlan, percent: int, text: str) -> None:
    WeekPlan.objects.within(week_plan.scope).filter(pk=week_plan.pk).update(
        percent=percent, progress_text=text
    )


def _fail(week_plan: WeekPlan, why: str, at: datetime) -> WeekPlan:
    week_plan.state, week_plan.failure, week_plan.finished_at = WeekPlanState.FAILED, why, at
    week_plan.save()
    return week_plan


def _set_others_aside(week_plan: WeekPlan) -> None:
    rows = WeekPlan.objects.within(week_plan.scope).filter(
        monday=week_plan.monday, state=WeekPlanState.PROPOSED
    )
    rows.exclude(pk=week_plan.pk).update(state=WeekPlanState.SET_ASIDE)
