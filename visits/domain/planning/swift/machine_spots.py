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
    MEAL,
    MEAL_EARLIEST,
    MEAL_LATEST,
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
from visits.domain.planning.swift.machine_timing import FED, HUNGRY, INF, MOST, ROW, begin, extend, go_home


@compiled
def go_to(
    week: WeekArrays, desk: Desk, shift: int, job: int, leg: int, first: bool, source: int, target: int
) -> bool:
    """Labels after `job` in row `target` from those in row `source`; false where there are none."""
    cell = shift * week.job.shape[0] + job
    return extend(
        week.opens,
        week.open_late,
        week.open_at[cell],
        week.open_at[cell + 1],
        week.job[job, LENGTH],
        leg,
        week.shift[shift, MEAL],
        week.shift[shift, MEAL_EARLIEST],
        week.shift[shift, MEAL_LATEST],
        first,
        desk.figures,
        desk.late,
        desk.many,
        source,
        target,
    )


@compiled
def finish(
    week: WeekArrays, desk: Desk, shift: int, order: Ints, at: int, size: int, here: int, row: int
) -> float:
    """Cost of work and lateness when the labels of a row to try in stand before stop `at` of the order."""
    tries = desk.many.shape[0] - 2
    for i in range(at, size):
        place = week.job[order[i], WHERE]
        other = 2 * tries + 1 - row
        if not go_to(week, desk, shift, order[i], week.times[here, place], i == 0, row, other):
            return INF
        row, here = other, place
    leg = week.times[here, week.shift[shift, PLACE]]
    return go_home(week, shift, leg, desk.figures, desk.late, desk.many, row)


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
    row = desk.many.shape[0] - 2
    begin(week, shift, desk.figures, desk.late, desk.many, row)
    work = finish(week, desk, shift, order, 0, size, base, row)
    return INF if work >= INF else work + week.rate[shift, FIXED] + metres * week.rate[shift, PER_METRE]


@compiled
def relabel(week: WeekArrays, desk: Desk, shift: int) -> None:
    """Labels after each stop of the shift's present order, and how late the crew may be ready at each."""
    size, base, jobs = desk.now[NOW, shift, SIZE], week.shift[shift, PLACE], week.job.shape[0]
    row = shift * desk.order.shape[2]
    begin(week, shift, desk.figures, desk.late, desk.many, row)
    here = base
    for i in range(size):
        job = desk.order[NOW, shift, i]
        leg = week.times[here, week.job[job, WHERE]]
        go_to(week, desk, shift, job, leg, i == 0, row + i, row + i + 1)
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
def soonest(figures: Ints, many: Ints, row: int) -> int:
    """The earliest the crew is free, over all labels of a row."""
    best = 2**60
    for i in range(row * ROW, row * ROW + many[row, FED]):
        best = min(best, figures[i, 0])
    for i in range(row * ROW + MOST, row * ROW + MOST + many[row, HUNGRY]):
        best = min(best, figures[i, 0])
    return best


@compiled
def find_spot(week: WeekArrays, desk: Desk, job: int, shift: int) -> None:
    """Best place of the job in the shift's present order, put into the memory of spots."""
    cell, base = shift * week.job.shape[0] + job, week.shift[shift, PLACE]
    low, high = week.open_at[cell], week.open_at[cell + 1]
    mine, level, length = week.job[job, WHERE], week.job[job, LEVEL], week.job[job, LENGTH]
    desk.spot[job, shift, 0] = desk.now[NOW, shift, STAMP]
    desk.extra[job, shift] = INF
    if low == high or desk.now[NOW, shift, LOAD] + week.job[job, COWS] > week.shift[shift, MOST_COWS]:
        return
    if desk.now[NOW, shift, LABELLED] != desk.now[NOW, shift, STAMP]:
        relabel(week, desk, shift)
    size, road_now, busy_now = (
        desk.now[NOW, shift, SIZE],
        desk.now[NOW, shift, ROAD],
        desk.now[NOW, shift, BUSY],
    )
    most, per_tick, per_metre = (
        week.shift[shift, WORK],
        week.rate[shift, PER_TICK],
        week.rate[shift, PER_METRE],
    )
    fixed = week.rate[shift, FIXED] - desk.cost[NOW, shift]
    opens, closes = week.opens[low, 0], week.opens[high - 1, 1]
    row, tries = shift * desk.order.shape[2], desk.many.shape[0] - 2
    best, best_at, before = INF, 0, base
    for at in range(size + 1):
        if at > 0:
            before = week.job[desk.order[NOW, shift, at - 1], WHERE]
            if week.job[desk.order[NOW, shift, at - 1], LEVEL] > level:
                break
        after = base if at == size else week.job[desk.order[NOW, shift, at], WHERE]
        if at < size and week.job[desk.order[NOW, shift, at], LEVEL] < level:
            continue
        to, on = week.times[before, mine], week.times[mine, after]
        metres = road_now + week.metres[before, mine] + week.metres[mine, after] - week.metres[before, after]
        road = fixed + metres * per_metre
        busy = busy_now + to + on - week.times[before, after] + length
        if busy > most or road + busy * per_tick >= best:
            continue
        ready = soonest(desk.figures, desk.many, row + at) + to
        if ready > closes:
            break
        if max(ready, opens) + length + on > desk.ready_by[shift, at]:
            continue
        if not go_to(week, desk, shift, job, to, at == 0, row + at, tries):
            continue
        work = finish(week, desk, shift, desk.order[NOW, shift], at, size, mine, tries)
        if work + road < best:
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
