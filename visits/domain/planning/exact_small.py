"""The proven best week of a small problem: every set of jobs in every shift, then the best way to share them.

For each shift, each set of jobs gets its cheapest order, grown job by job; an order that cannot be done ends its
branch, since adding a job at the end never makes room. Then sets are shared out over the shifts, smallest total.
"""

from collections.abc import Callable
from math import inf

from visits.domain.planning.board import Board, Order, Week

MOST_JOBS = 7


def best_week(board: Board, give_up: Callable[[], bool] = lambda: False) -> Week | None:
    """The week of least cost for at most `MOST_JOBS` jobs, exact; None where `give_up` said so first."""
    jobs = len(board.problem.jobs)
    full = (1 << jobs) - 1
    shared: dict[int, tuple[float, Week]] = {0: (0.0, ())}
    for shift in range(len(board.problem.shifts)):
        if give_up():
            return None
        shared = _share(shared, _best_orders(board, shift))
    out = [sum(board.out_cost(job) for job in range(jobs) if left >> job & 1) for left in range(full + 1)]
    return min((cost + out[full & ~used], used, week) for used, (cost, week) in shared.items())[2]


def _share(
    shared: dict[int, tuple[float, Week]], orders: dict[int, tuple[float, Order]]
) -> dict[int, tuple[float, Week]]:
    grown: dict[int, tuple[float, Week]] = {}
    for used, (cost, week) in shared.items():
        for taken, (more, order) in orders.items():
            both = used | taken
            if not used & taken and cost + more < grown.get(both, (inf, ()))[0]:
                grown[both] = (cost + more, (*week, order))
    return grown


def _best_orders(board: Board, shift: int) -> dict[int, tuple[float, Order]]:
    """The cheapest order of every set of jobs this shift can do."""
    best: dict[int, tuple[float, Order]] = {0: (0.0, ())}
    able = [job for job in range(len(board.problem.jobs)) if board.openings[shift][job]]
    grow: list[tuple[int, Order]] = [(0, ())]
    while grow:
        used, order = grow.pop()
        for job in able:
            longer = (*order, job)
            if used >> job & 1 or not board.allowed(shift, longer) or not can_follow(board, shift, longer):
                continue
            taken = used | 1 << job
            grow.append((taken, longer))
            known = best.get(taken, (inf, ()))[0]
            if board.floor(shift, longer) < known and (cost := board.cost(shift, longer)) < known:
                best[taken] = (cost, longer)
    return best


def can_follow(board: Board, shift: int, order: Order) -> bool:
    """Whether the jobs of `order` can be started one after another, whatever comes after them."""
    route = board.route(shift, order)
    free = route.shift.start
    for leg, length, options in zip(route.legs, route.lengths, route.starts, strict=False):
        first = next((option.first for option in options if option.last >= free + leg), None)
        if first is None:
            return False
        free = max(free + leg, first) + length
    return True
