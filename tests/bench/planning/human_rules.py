"""Two ways a week is planned in the head (common practice, no source), by the solver's own exact timing.

Promised visits go into the diary first. A visit goes into a day where it fits with the least detour, else the next.
"""

from math import atan2, inf

from visits.domain.planning.insertion import Spot


def promised(board):
    """A diary with the promised visits only."""
    week = [() for _ in board.problem.shifts]
    for at, job in enumerate(board.problem.jobs):
        if job.fixed is not None:
            put(board, week, at, [job.fixed.shift])
    return week


def put(board, week, job, shifts):
    """Into the first of these shifts that can take it."""
    for shift in shifts:
        order = week[shift]
        spots = [(*order[:at], job, *order[at:]) for at in range(len(order) + 1)]
        best = min((Spot(board.cost(shift, each), shift, each) for each in spots), default=None)
        if best is not None and best.extra < inf:
            week[shift] = best.order
            return


def nearest_by_due_day(board):
    """What is due first goes first; of those the nearest to the last farm; each into the first day that holds it."""
    week, jobs, here = promised(board), board.problem.jobs, board.problem.shifts[0].place
    left = {at for at, job in enumerate(jobs) if job.fixed is None}
    times = board.problem.travel.times
    while left:
        first = min(left, key=lambda at: (str(jobs[at].due or "9"), times[here][jobs[at].place], at))
        left.discard(first)
        put(board, week, first, board.homes[first])
        here = jobs[first].place
    return tuple(week)


def same_area_same_day(board, points):
    """Farms round the yard cut into as many slices as there are days; each slice belongs to a day."""
    week, jobs, shifts = promised(board), board.problem.jobs, len(board.problem.shifts)
    rest = sorted((at for at, job in enumerate(jobs) if job.fixed is None), key=lambda at: atan2(*points[at]))
    for number, at in enumerate(rest):
        day = number * shifts // len(rest)
        put(board, week, at, [(day + later) % shifts for later in range(shifts)])
    return tuple(week)
