"""Where a job fits into a shift's present order, at exact cost."""

from visits.domain.planning.compiled import compiled
from visits.domain.planning.swift.arrays import Ints, WeekArrays
from visits.domain.planning.swift.columns import (
    BUSY,
    COWS,
    END,
    FIXED,
    LABELLED,
    LENGTH,
    LEVEL,
    LOAD,
    MOST_COWS,
    PER_METRE,
    PER_TICK,
    PLACE,
    ROAD,
    SIZE,
    STAMP,
    WHERE,
    WORK,
)
from visits.domain.planning.swift.machine_desk import NOW, Desk, settle, touch
from visits.domain.planning.swift.machine_timing import INF, begin, extend, go_home


@compiled
def finish(
    week: WeekArrays, desk: Desk, shift: int, order: Ints, at: int, size: int, here: int, a: int
) -> float:
    """Cost of work and lateness when the labels tried in half `a` stand before stop `at` of the order."""
    for i in range(at, size):
        job = order[i]
        place = week.job[job, WHERE]
        b = 1 - a
        if not extend(
            week,
            shift,
            job,
            week.times[here, place],
            i == 0,
            desk.tried[a],
            desk.tried_late[a],
            desk.tried_many[a],
            desk.tried[b],
            desk.tried_late[b],
            desk.tried_many[b],
        ):
            return INF
        a, here = b, place
    leg = week.times[here, week.shift[shift, PLACE]]
    return go_home(week, shift, leg, desk.tried[a], desk.tried_late[a], desk.tried_many[a])


@compiled
def order_cost(week: WeekArrays, desk: Desk, shift: int, order: Ints, size: int) -> float:
    """Exact cost of an order, lateness and fixed cost included; INF where it breaks a rule."""
    if size == 0:
        return 0.0
    base = week.shift[shift, PLACE]
    here, cows, metres = base, 0, 0
    for i in range(size):
        job = order[i]
        cows += week.job[job, COWS]
        metres += week.metres[here, week.job[job, WHERE]]
        here = week.job[job, WHERE]
        if i > 0 and week.job[order[i - 1], LEVEL] > week.job[job, LEVEL]:
            return INF
    if cows > week.shift[shift, MOST_COWS]:
        return INF
    metres += week.metres[here, base]
    begin(week, shift, desk.tried[0], desk.tried_late[0], desk.tried_many[0])
    work = finish(week, desk, shift, order, 0, size, base, 0)
    return INF if work >= INF else work + week.rate[shift, FIXED] + metres * week.rate[shift, PER_METRE]


@compiled
def relabel(week: WeekArrays, desk: Desk, shift: int) -> None:
    """Labels after each stop of the shift's present order, and how late the crew may be ready at each."""
    size, base, jobs = desk.now[NOW, shift, SIZE], week.shift[shift, PLACE], week.job.shape[0]
    labels, late, many = desk.labels[shift], desk.late[shift], desk.many[shift]
    begin(week, shift, labels[0], late[0], many[0])
    here = base
    for i in range(size):
        job = desk.order[NOW, shift, i]
        leg = week.times[here, week.job[job, WHERE]]
        extend(
            week,
            shift,
            job,
            leg,
            i == 0,
            labels[i],
            late[i],
            many[i],
            labels[i + 1],
            late[i + 1],
            many[i + 1],
        )
        here = week.job[job, WHERE]
    by, after = week.shift[shift, END], base
    desk.ready_by[shift, size] = by
    for i in range(size - 1, -1, -1):
        job = desk.order[NOW, shift, i]
        start_by = by - week.times[week.job[job, WHERE], after] - week.job[job, LENGTH]
        by, after = -1, week.job[job, WHERE]
        cell = shift * jobs + job
        for o in range(week.open_at[cell], week.open_at[cell + 1]):
            if week.opens[o, 0] <= start_by:
                by = max(by, min(week.opens[o, 1], start_by))
        desk.ready_by[shift, i] = by
    desk.now[NOW, shift, LABELLED] = desk.now[NOW, shift, STAMP]


@compiled
def soonest(labels: Ints, many: Ints) -> int:
    """The earliest the crew is free, over all labels of a stop."""
    best = 2**60
    for side in range(2):
        for i in range(many[side]):
            best = min(best, labels[side, i, 0])
    return best


@compiled
def find_spot(week: WeekArrays, desk: Desk, job: int, shift: int) -> None:
    """Best place of the job in the shift's present order, put into the memory of spots."""
    now, row, rate, mine = desk.now[NOW, shift], week.shift[shift], week.rate[shift], week.job[job]
    cell, base, order = shift * week.job.shape[0] + job, row[PLACE], desk.order[NOW, shift]
    desk.spot[job, shift, 0] = now[STAMP]
    desk.extra[job, shift] = INF
    if week.open_at[cell] == week.open_at[cell + 1] or now[LOAD] + mine[COWS] > row[MOST_COWS]:
        return
    if now[LABELLED] != now[STAMP]:
        relabel(week, desk, shift)
    opens, closes = week.opens[week.open_at[cell], 0], week.opens[week.open_at[cell + 1] - 1, 1]
    best, best_at, before = INF, 0, base
    for at in range(now[SIZE] + 1):
        if at > 0:
            before = week.job[order[at - 1], WHERE]
            if week.job[order[at - 1], LEVEL] > mine[LEVEL]:
                break
        after = base if at == now[SIZE] else week.job[order[at], WHERE]
        if at < now[SIZE] and week.job[order[at], LEVEL] < mine[LEVEL]:
            continue
        to, on = week.times[before, mine[WHERE]], week.times[mine[WHERE], after]
        metres = now[ROAD] + week.metres[before, mine[WHERE]] + week.metres[mine[WHERE], after]
        road = rate[FIXED] + (metres - week.metres[before, after]) * rate[PER_METRE] - desk.cost[NOW, shift]
        busy = now[BUSY] + to + on - week.times[before, after] + mine[LENGTH]
        if busy > row[WORK] or road + busy * rate[PER_TICK] >= best:
            continue
        here = soonest(desk.labels[shift, at], desk.many[shift, at]) + to
        if here > closes:
            break
        if max(here, opens) + mine[LENGTH] + on > desk.ready_by[shift, at]:
            continue
        if not extend(
            week,
            shift,
            job,
            to,
            at == 0,
            desk.labels[shift, at],
            desk.late[shift, at],
            desk.many[shift, at],
            desk.tried[0],
            desk.tried_late[0],
            desk.tried_many[0],
        ):
            continue
        work = (
            finish(week, desk, shift, order, at, now[SIZE], mine[WHERE], 0)
            if at < now[SIZE]
            else go_home(week, shift, on, desk.tried[0], desk.tried_late[0], desk.tried_many[0])
        )
        if work < INF and work + road < best:
            best, best_at = work + road, at
    desk.extra[job, shift], desk.spot[job, shift, 1] = best, best_at


@compiled
def put_in(week: WeekArrays, desk: Desk, job: int, shift: int) -> None:
    """Insert the job at its remembered spot."""
    touch(desk, shift)
    at, order = desk.spot[job, shift, 1], desk.order[NOW, shift]
    for i in range(desk.now[NOW, shift, SIZE], at, -1):
        order[i] = order[i - 1]
    order[at] = job
    desk.now[NOW, shift, SIZE] += 1
    desk.cost[NOW, shift] += desk.extra[job, shift]
    desk.home[job] = shift
    settle(week, desk, shift)
