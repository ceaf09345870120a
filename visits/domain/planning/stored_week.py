"""A plan document back to the orders of a week, and orders to a document that has passed the audit."""

import json
from collections.abc import Mapping, Sequence

from visits.domain.planning.audit import audit_week
from visits.domain.planning.board import Board, Week
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.problem import WeekProblem

BY_HAND = "trimops-by-hand"


class PlanBreaksRules(Exception):
    """A plan did not pass the audit: a fault of the program, never of the user."""


def week_of_document(problem: WeekProblem, plan: Mapping[str, object]) -> Week:
    """The orders of a plan document, by the indexes of `problem`; jobs and shifts it no longer has are passed over."""
    shifts = {shift.id: at for at, shift in enumerate(problem.shifts)}
    jobs = {job.id: at for at, job in enumerate(problem.jobs)}
    orders: list[tuple[int, ...]] = [() for _ in problem.shifts]
    for shift in _parts(plan.get("shifts")):
        if (at := shifts.get(str(shift["id"]))) is not None:
            stops = [str(stop["job"]) for stop in _parts(shift["stops"])]
            orders[at] = tuple(jobs[job] for job in stops if job in jobs)
    return tuple(orders)


def document_of_week(text: str, board: Board, week: Week, *, engine: str = BY_HAND) -> dict[str, object]:
    """The plan document of these orders with exact times and costs, and true reasons for what is left out.

    `text` is the problem of `board`. Raises PlanBreaksRules where the audit finds a breach; an order that cannot
    be done at all raises ValueError naming the shift.
    """
    for at, order in enumerate(week):
        if order and board.timing(at, order) is None:
            raise ValueError(f"{board.problem.shifts[at].id}: these visits do not fit in this order")
    return audited(
        text, plan_to_json(build_plan(board, week, engine=engine, seed=0, seconds=0, proven=False))
    )


def audited(text: str, document: dict[str, object]) -> dict[str, object]:
    """The document itself, if the audit finds nothing; else PlanBreaksRules with a line per breach."""
    breaches = audit_week(json.loads(text), json.loads(json.dumps(document)))
    if breaches:
        raise PlanBreaksRules("\n".join(breaches))
    return document


def _parts(value: object) -> Sequence[Mapping[str, object]]:
    return [part for part in value if isinstance(part, dict)] if isinstance(value, list) else []
