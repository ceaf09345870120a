"""Changes that are not worth their price are taken back: days and vans one visit at a time, then orders of the day."""

from math import inf

from visits.domain.planning.board import Board, Order, Week


def put_back(board: Board, week: Week, before: Week) -> Week:
    """`week` with each moved visit back in its old shift, and in its old order, where that costs no more."""
    home = {job: shift for shift, order in enumerate(before) for job in order}
    changed = True
    while changed:
        changed = False
        for shift, order in enumerate(week):
            for job in order:
                old = home.get(job)
                if old is not None and old != shift and (back := _back(board, week, job, (shift, old))):
                    week, changed = back, True
    return tuple(_in_old_order(board, shift, order, before[shift]) for shift, order in enumerate(week))


def _in_old_order(board: Board, shift: int, order: Order, before: Order) -> Order:
    """The visits that were in this shift before follow one another as they did then, if that costs no more."""
    place = {job: at for at, job in enumerate(before)}
    known = iter(sorted((job for job in order if job in place), key=place.__getitem__))
    as_before = tuple(next(known) if job in place else job for job in order)
    return as_before if board.cost(shift, as_before) <= board.cost(shift, order) + 1e-9 else order


def _back(board: Board, week: Week, job: int, ways: tuple[int, int]) -> Week | None:
    shift, old = ways
    rest = tuple(each for each in week[shift] if each != job)
    saved = board.cost(shift, week[shift]) - board.cost(shift, rest)
    places = [(*week[old][:at], job, *week[old][at:]) for at in range(len(week[old]) + 1)]
    cost, order = min(((board.cost(old, order), order) for order in places), default=(inf, ()))
    if cost - board.cost(old, week[old]) > saved + 1e-9 or cost == inf:
        return None
    changed: dict[int, Order] = {shift: rest, old: order}
    return tuple(changed.get(at, each) for at, each in enumerate(week))
