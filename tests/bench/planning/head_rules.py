"""How a person fills a week in the head: two rules of thumb, each given the best possible clock for its order.

Promises with a fixed start go into the diary first. Every other farm goes where the rule says, as long as the day
still holds it; what is left at the end goes into the first spot of the week that can take it.
Timing is the planner's exact timing, which flatters the rules: their costs are the least for their orders.
"""

from math import atan2, inf

from visits.domain.planning.board import Board, Week


def nearest_by_due_date(board: Board) -> Week:
    """Day by day: of the farms due soonest that still fit, the one nearest to the last stop comes next."""
    week, waiting = diary(board)
    for shift in in_order(board):
        extend(board, week, shift, waiting, by_due=True)
    squeeze_in(board, week, waiting)
    return tuple(week)


def same_area_same_day(board: Board, bearings: list[float]) -> Week:
    """As many areas as shifts, cut by the compass (`bearings` of the jobs); one area a shift, nearest next."""
    week, waiting = diary(board)
    shifts = in_order(board)
    round_the_yard = sorted(waiting, key=lambda job: (bearings[job], job))
    size = max(1, -(-len(round_the_yard) // max(1, len(shifts))))
    for number, shift in enumerate(shifts):
        area = set(round_the_yard[number * size : (number + 1) * size])
        extend(board, week, shift, area & waiting, by_due=False)
        waiting -= set(week[shift])
    for shift in shifts:
        extend(board, week, shift, waiting, by_due=False)
    squeeze_in(board, week, waiting)
    return tuple(week)


def bearings_of(problem: dict) -> list[float]:
    """The compass direction of each job's site from the first base, radians."""
    yard, places = problem["bases"][0], {site["id"]: site for site in problem["sites"]}
    spots = [places[job["site"]] for job in problem["jobs"]]
    return [atan2(spot["lon"] - yard["lon"], spot["lat"] - yard["lat"]) for spot in spots]


def in_order(board: Board) -> list[int]:
    shifts = board.problem.shifts
    return sorted(range(len(shifts)), key=lambda shift: (shifts[shift].start, shift))


def diary(board: Board) -> tuple[list[tuple[int, ...]], set[int]]:
    """The week with its promises only, and the jobs still to place."""
    week: list[tuple[int, ...]] = [() for _ in board.problem.shifts]
    waiting = set(range(len(board.problem.jobs)))
    for at, job in enumerate(board.problem.jobs):
        if job.fixed is not None and board.cost(job.fixed.shift, (*week[job.fixed.shift], at)) < inf:
            week[job.fixed.shift] += (at,)
            waiting.discard(at)
    return week, waiting


def extend(board: Board, week: list[tuple[int, ...]], shift: int, waiting: set[int], *, by_due: bool) -> None:
    """Put one farm after another behind the last one chosen (before or after the promise) until none fits."""
    here, spot = board.problem.shifts[shift].place, 0
    while True:
        found = None
        for job in sorted(waiting, key=lambda job: rank(board, here, job, by_due)):
            found = first_spot(board, week[shift], shift, job, spot)
            if found is not None:
                break
        if found is None:
            return
        week[shift], spot = found
        here = board.problem.jobs[job].place
        waiting.discard(job)


def rank(board: Board, here: int, job: int, by_due: bool) -> tuple[int, int, int]:
    due = board.problem.jobs[job].due
    soon = (due.toordinal() if due else 10**7) if by_due else 0
    return soon, board.problem.travel.times[here][board.problem.jobs[job].place], job


def first_spot(
    board: Board, order: tuple[int, ...], shift: int, job: int, first: int
) -> tuple[tuple[int, ...], int] | None:
    """The earliest place from `first` on that keeps every rule, and the place behind it."""
    for at in range(first, len(order) + 1):
        tried = (*order[:at], job, *order[at:])
        if board.cost(shift, tried) < inf:
            return tried, at + 1
    return None


def squeeze_in(board: Board, week: list[tuple[int, ...]], waiting: set[int]) -> None:
    """The jobs nobody placed: those that must be done first, into the first spot of the week."""
    for job in sorted(waiting, key=lambda job: (board.problem.jobs[job].leave_out_cost is not None, job)):
        for shift in in_order(board):
            found = first_spot(board, week[shift], shift, job, 0)
            if found is not None:
                week[shift] = found[0]
                waiting.discard(job)
                break
