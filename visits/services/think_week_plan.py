"""The planner thinks; how far it is can be read meanwhile. Run as a job."""

import json
from collections import deque
from concurrent.futures import ThreadPoolExecutor, wait
from datetime import datetime
from threading import Event

from visits.domain.planning.cost_history import falling
from visits.domain.planning.plan_week_problem import plan_week_problem
from visits.domain.planning.problem_faults import ProblemFaults
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.planning.stored_week import PlanBreaksRules
from visits.models import WeekPlan, WeekPlanState
from visits.selectors.plan_in_force import plan_in_force
from visits.services.give_reasons import give_reasons
from visits.services.propose_plan import fail_plan, propose_plan
from visits.services.put_week_on_roads import put_week_on_roads

TELL_SECONDS = 0.5
Told = tuple[float, float]
"""Seconds gone, cost of the best week so far."""


def think_week_plan(*, week_plan: WeekPlan, limits: SolveLimits, at: datetime) -> WeekPlan:
    """Solve, audit and propose. Running it again on a plan that is already proposed changes nothing.

    Not one transaction: its steps are to be seen from outside while it thinks.
    """
    if week_plan.state == WeekPlanState.PROPOSED and week_plan.reasons is None:
        return give_reasons(week_plan=week_plan)  # because: whoever proposed it was killed before that
    if week_plan.state != WeekPlanState.THINKING:
        return week_plan

    try:
        week_plan = put_week_on_roads(week_plan=week_plan, at=at)
        document = _thought_out(week_plan, limits)
    except (ProblemFaults, PlanBreaksRules) as fault:
        why = str(fault) or "; ".join(getattr(fault, "faults", []))
        return fail_plan(week_plan=week_plan, why=why, at=at)
    except Exception:  # because: whoever watches must not wait for ever; what broke goes on to the log
        why = "The planner broke down. Ask for the plan again; the log says more."
        fail_plan(week_plan=week_plan, why=why, at=at)
        raise
    week_plan.plan = document
    if not propose_plan(week_plan=week_plan, at=at):
        return WeekPlan.objects.within(week_plan.scope).get(pk=week_plan.pk)
    return give_reasons(week_plan=week_plan)


def _thought_out(week_plan: WeekPlan, limits: SolveLimits) -> dict[str, object]:
    """The plan document; the search sets out from the plan in force, where there is one.

    It has threads of its own and tells its progress from them; only this one asks the database and writes: a search
    thread would open a connection that nobody closes, and would wait for its lock.
    """
    heard: deque[Told] = deque()
    stop = Event()
    if _is_stopped(week_plan):
        stop.set()
    known = plan_in_force(week_plan.scope, week_plan.monday)
    _say(week_plan, "Getting ready")
    with ThreadPoolExecutor(1) as hand:
        run = hand.submit(
            plan_week_problem,
            json.dumps(week_plan.problem),
            limits=limits,
            progress=lambda seconds, cost: heard.append((seconds, cost)),
            should_stop=stop.is_set,
            start=known.plan if known else None,
        )
        while not wait([run], timeout=TELL_SECONDS).done:
            _tell(week_plan, heard, limits)
            if not stop.is_set() and _is_stopped(week_plan):
                stop.set()
        _tell(week_plan, heard, limits)
        return run.result()[0]


def _say(week_plan: WeekPlan, text: str) -> None:
    """The first word, before anything has been found: it takes a while to load the engine."""
    WeekPlan.objects.within(week_plan.scope).filter(pk=week_plan.pk).update(progress_text=text)


def _is_stopped(week_plan: WeekPlan) -> bool:
    rows = WeekPlan.objects.within(week_plan.scope).filter(pk=week_plan.pk)
    return rows.filter(stop_asked_at__isnull=False).exists()


def _tell(week_plan: WeekPlan, heard: deque[Told], limits: SolveLimits) -> None:
    """Put down what has been heard since the last time, the costs that fell as points of their history."""
    told = [heard.popleft() for _ in range(len(heard))]
    if not told:
        return
    history = week_plan.cost_history = falling([*week_plan.cost_history, *told])
    seconds, cost = told[-1]
    percent, text = _in_words(seconds, cost, limits)
    WeekPlan.objects.within(week_plan.scope).filter(pk=week_plan.pk).update(
        percent=percent, progress_text=text, cost_history=history
    )


def _in_words(seconds: float, cost: float, limits: SolveLimits) -> tuple[int, str]:
    share = min(99, round(100 * seconds / limits.seconds)) if limits.iterations is None else 50
    return share, f"Best so far costs {cost / 100:,.2f}"
