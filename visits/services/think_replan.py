"""The planner thinks about a week under way; how far it is can be read meanwhile. Run as a job."""

from collections import deque
from concurrent.futures import ThreadPoolExecutor, wait
from datetime import datetime

from visits.domain.planning.problem_faults import ProblemFaults
from visits.domain.planning.replan.replan import Replanned, replan
from visits.domain.planning.replan.stored_change import read_change
from visits.domain.planning.search_clock import SearchClock
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.planning.stored_week import PlanBreaksRules
from visits.models import WeekPlan, WeekPlanState
from visits.services.give_reasons import give_reasons
from visits.services.propose_plan import fail_plan, propose_plan

TELL_SECONDS = 0.3


def think_replan(*, week_plan: WeekPlan, limits: SolveLimits, at: datetime) -> WeekPlan:
    """Plan, audit and propose. Running it again on a plan that is already proposed changes nothing.

    Not one transaction: its steps are to be seen from outside while it thinks.
    """
    if week_plan.state == WeekPlanState.PROPOSED and week_plan.reasons is None:
        return give_reasons(week_plan=week_plan)  # because: whoever proposed it was killed before that
    if week_plan.state != WeekPlanState.THINKING or week_plan.change is None:
        return week_plan
    try:
        found = _thought_out(week_plan, limits)
    except (ProblemFaults, PlanBreaksRules) as fault:
        why = str(fault) or "; ".join(getattr(fault, "faults", []))
        return fail_plan(week_plan=week_plan, why=why, at=at)
    except Exception:  # because: whoever watches must not wait for ever; what broke goes on to the log
        why = "The planner broke down. What happened is kept; plan the week again."
        fail_plan(week_plan=week_plan, why=why, at=at)
        raise
    week_plan.problem, week_plan.plan = found.problem, found.plan
    if not propose_plan(week_plan=week_plan, at=at):
        return WeekPlan.objects.within(week_plan.scope).get(pk=week_plan.pk)
    return give_reasons(week_plan=week_plan)


def _thought_out(week_plan: WeekPlan, limits: SolveLimits) -> Replanned:
    """The new plan. The search may tell its progress from threads of its own; only this one writes."""
    heard: deque[tuple[float, float]] = deque(maxlen=1)
    clock = SearchClock(limits, lambda seconds, cost: heard.append((seconds, cost)))
    change = read_change(week_plan.change or {})
    with ThreadPoolExecutor(1) as hand:
        run = hand.submit(replan, week_plan.problem, change.in_force, change.price, clock)
        while not wait([run], timeout=TELL_SECONDS).done:
            if heard:
                seconds, _ = heard.pop()
                _tell(week_plan, min(99, round(100 * seconds / limits.seconds)))
        return run.result()


def _tell(week_plan: WeekPlan, percent: int) -> None:
    rows = WeekPlan.objects.within(week_plan.scope).filter(pk=week_plan.pk)
    rows.update(percent=percent, progress_text="Looking for the least change")
