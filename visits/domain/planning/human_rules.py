"""How a person fills a week in the head: two rules of thumb (common practice, no source).

Both begin with the diary: promised visits first, then those that must be done, then the rest. Each visit goes into
a day at the place with the least detour, by the planner's own exact timing and with every rule kept: that flatters
the rules, since their costs are the least for their orders. A visit that no day of the rule can hold is left out.
"""

from collections.abc import Iterable, Mapping, Sequence
from itertools import accumulate
from math import atan2, inf

from visits.domain.planning.board import Board, Order, Week


def nearest_by_due_date(board: Board) -> Week:
    """What is due first goes first, of those the nearest to the last farm; each into the first day that holds it."""
    week, waiting = _diary(board)
    shifts = _by_time(board)
    here = board.problem.shifts[shifts[0]].place if shifts else 0
    while waiting:
        job = min(waiting, key=lambda job: _turn(board, here, job))
        waiting.discard(job)
        _put(board, week, job, shifts)
        here = board.problem.jobs[job].place
    return tuple(week)


def same_area_same_day(board: Board, bearings: Sequence[float]) -> Week:
    """The country round the yard cut like a cake, a slice of equal work for each shift, leftovers into the next.

    `bearings`: the compass direction of each job's site from the yard, radians (`bearings_of`).
    """
    week, waiting = _diary(board)
    shifts, jobs = _by_time(board), board.problem.jobs
    cake = sorted(waiting, key=lambda job: (bearings[job], job))
    work = list(accumulate((jobs[job].length + 1 for job in cake), initial=0))
    slices = {job: done * len(shifts) // work[-1] for job, done in zip(cake, work, strict=False)}
    for job in sorted(cake, key=lambda job: (jobs[job].leave_out_cost is not None, bearings[job], job)):
        first = slices[job]
        _put(board, week, job, [*shifts[first:], *shifts[:first]])
    return tuple(week)


def bearings_of(document: Mapping[str, object]) -> list[float]:
    """The compass direction of each job's site from the first base, radians, for a faultless problem document."""
    sites = {str(site["id"]): _point(site) for site in _parts(document, "sites")}
    yards = [_point(base) for base in _parts(document, "bases")]
    lat, lon = yards[0] if yards else (0.0, 0.0)
    points = [sites[str(job["site"])] for job in _parts(document, "jobs")]
    return [atan2(east - lon, north - lat) for north, east in points]


def _point(place: Mapping[str, object]) -> tuple[float, float]:
    return float(str(place["lat"])), float(str(place["lon"]))


def _parts(document: Mapping[str, object], key: str) -> list[Mapping[str, object]]:
    value = document[key]
    return [part for part in value if isinstance(part, dict)] if isinstance(value, list) else []


def _by_time(board: Board) -> list[int]:
    shifts = board.problem.shifts
    return sorted(range(len(shifts)), key=lambda shift: (shifts[shift].start, shift))


def _diary(board: Board) -> tuple[list[Order], set[int]]:
    """The week with its promises only, and the jobs still to place; a promise that cannot be kept is neither."""
    week: list[Order] = [() for _ in board.problem.shifts]
    waiting: set[int] = set()
    for at, job in enumerate(board.problem.jobs):
        if job.fixed is None:
            waiting.add(at)
        else:
            _put(board, week, at, [job.fixed.shift])
    return week, waiting


def _turn(board: Board, here: int, job: int) -> tuple[bool, int, int, int]:
    asked = board.problem.jobs[job]
    due = asked.due.toordinal() if asked.due else 10**7
    return asked.leave_out_cost is not None, due, board.problem.travel.times[here][asked.place], job


def _put(board: Board, week: list[Order], job: int, shifts: Iterable[int]) -> None:
    """Into the first of these shifts that can take it, where the shift then costs least."""
    for shift in shifts:
        order = week[shift]
        spots = [(*order[:at], job, *order[at:]) for at in range(len(order) + 1)]
        cost, best = min((board.cost(shift, each), each) for each in spots)
        if cost < inf:
            week[shift] = best
            return
