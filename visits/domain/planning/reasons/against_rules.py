"""The plan against what a person would do by two rules of thumb: the same figures for each, and the rule named."""

from collections.abc import Sequence

from visits.domain.planning.board import Board, Week
from visits.domain.planning.human_rules import nearest_by_due_date, same_area_same_day
from visits.domain.planning.lay_out import lay_out
from visits.domain.planning.measures import PER_HOUR, kilometres
from visits.domain.planning.reasons.reason import Figure, Reason


def against_rules(board: Board, week: Week, bearings: Sequence[float]) -> list[Reason]:
    """The plan first, then both rules. `bearings` as `bearings_of` gives them."""
    return [
        Reason("this-plan", week_sums(board, week)),
        Reason("nearest-by-due-date", week_sums(board, nearest_by_due_date(board))),
        Reason("same-area-same-day", week_sums(board, same_area_same_day(board, bearings))),
    ]


def week_sums(board: Board, week: Week) -> dict[str, Figure]:
    """Visits done and left out (and how many of those had to be done), km, hours at work, days late, money.

    `money` is the cost of the contract, leave-out costs included; `road_money` that of the shifts alone.
    """
    jobs = board.problem.jobs
    done = {job for order in week for job in order}
    out = [job for at, job in enumerate(jobs) if at not in done]
    road = late = 0.0
    days = work = metres = 0
    for shift, order in enumerate(week):
        timing = board.timing(shift, order) if order else None
        if timing is None:
            continue
        work += timing.back - timing.leave
        metres += board.metres(shift, order)
        road += timing.cost - timing.late + board.road_cost(shift, order)
        late += timing.late
        days += sum(stop.days_late for stop in lay_out(board, shift, order, timing).stops)
    return {
        "done": len(done),
        "left_out": len(out),
        "must_left_out": sum(job.leave_out_cost is None or job.fixed is not None for job in out),
        "km": kilometres(metres),
        "hours": round(work / PER_HOUR, 3),
        "days_late": days,
        "road_money": round(road, 2),
        "money": round(road + late + sum(job.leave_out_cost or 0.0 for job in out), 2),
    }
