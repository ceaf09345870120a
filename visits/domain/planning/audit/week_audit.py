"""audit_week: one line per breach, from the problem and the plan alone."""

from collections.abc import Iterator

from visits.domain.planning.audit.check_calls import check_calls
from visits.domain.planning.audit.check_cost import check_cost
from visits.domain.planning.audit.check_figures import check_figures
from visits.domain.planning.audit.check_hygiene import check_hygiene
from visits.domain.planning.audit.check_lists import check_lists
from visits.domain.planning.audit.check_meal import check_meal
from visits.domain.planning.audit.check_reasons import check_reasons
from visits.domain.planning.audit.check_span import check_span
from visits.domain.planning.audit.plan import Plan
from visits.domain.planning.audit.read_plan import read_plan
from visits.domain.planning.audit.read_week import read_week
from visits.domain.planning.audit.runs import lay_out
from visits.domain.planning.audit.week import Week


def audit_week(problem: dict[str, object], plan: dict[str, object]) -> list[str]:
    """Every breach of the week contract, each "JSON path: sentence"; an empty list is a clean plan.

    `problem` and `plan`: the two documents as plain JSON values. Tolerances: a tenth of a second on durations
    and instants, a metre on distances, a hundredth of the minor unit on costs. A plan of the wrong form gives
    breaches about its form only; a problem that cannot be read raises Unreadable.
    """
    week = read_week(problem)
    told, faults = read_plan(plan)
    if faults.broken:
        return list(dict.fromkeys(faults.broken + faults.surplus))
    return [*faults.surplus, *_breaches(week, told)]


def _breaches(week: Week, plan: Plan) -> Iterator[str]:
    yield from check_lists(week, plan)
    runs = []
    for told in plan.shifts:
        run = lay_out(week, told)
        if run is None:
            continue
        runs.append(run)
        yield from check_span(run)
        yield from check_calls(week, run)
        yield from check_hygiene(week, run)
        yield from check_meal(run)
        yield from check_figures(week, run, told)
    yield from check_reasons(week, plan, runs)
    if len(runs) == len(plan.shifts):
        yield from check_cost(week, plan, runs)
