"""Everything one search holds, and the small steps that keep it in order."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from visits.domain.planning.compiled import compiled
from visits.domain.planning.swift.arrays import WeekArrays
from visits.domain.planning.swift.columns import (
    BUSY,
    CLASS,
    COWS,
    LABELLED,
    LENGTH,
    LOAD,
    NOW_COLUMNS,
    PLACE,
    ROAD,
    SIZE,
    STAMP,
    TOUCHED,
    WHERE,
)
from visits.domain.planning.swift.machine_timing import ROW

PRESENT, BEST = 0, 1
"""Columns of `money`."""


class Desk(NamedTuple):
    """S shifts, J jobs, R = J + 1 places in an order, M days in the pool."""

    order: NDArray[np.int64]
    """(3, S, R) job indexes: now, before this step, best."""
    now: NDArray[np.int64]
    """(3, S, NOW_COLUMNS) the same."""
    cost: NDArray[np.float64]
    """(3, S) of each shift, lateness included."""
    money: NDArray[np.float64]
    """(2,) of the present week, of the best."""
    tally: NDArray[np.int64]
    """(2,) last stamp given, steps done."""
    luck: NDArray[np.uint64]
    """(1,) the dice."""
    home: NDArray[np.int64]
    """(J,) shift or -1."""
    marks: NDArray[np.int64]
    """(2, J) out in this step; waiting to be put back."""
    keys: NDArray[np.float64]
    """(J,) of the waiting."""
    ready_by: NDArray[np.int64]
    """(S, R) latest a crew may be ready at each stop so that the rest can still be done."""
    figures: NDArray[np.int64]
    """((S * R + 2) * ROW, 3) the store of labels: row s * R + i after stop i of shift s; two rows to try in."""
    late: NDArray[np.float64]
    """((S * R + 2) * ROW,) their lateness."""
    many: NDArray[np.int64]
    """(S * R + 2, 2) how many there are."""
    spot: NDArray[np.int64]
    """(J, S, 2) best place of a job in a shift: the stamp it holds for, the place."""
    extra: NDArray[np.float64]
    """(J, S) what that place costs."""
    pool_key: NDArray[np.uint64]
    """(M,) hash of a shift's class and a set of jobs."""
    pool_cost: NDArray[np.float64]
    pool_day: NDArray[np.int16]
    """(M, R + 2) shift, size, order."""
    signs: NDArray[np.uint64]
    """(S + J,) random words for the hash."""


NOW, OLD, TOP = 0, 1, 2
"""First index of `order`, `now` and `cost`."""


def make_desk(shifts: int, jobs: int, seed: int, pool: int) -> Desk:
    """An empty desk; the same seed rolls the same dice."""
    r, dice = jobs + 1, np.random.default_rng(seed)
    now = np.zeros((3, shifts, NOW_COLUMNS), np.int64)
    now[:, :, LABELLED] = -1
    return Desk(
        order=np.zeros((3, shifts, r), np.int64),
        now=now,
        cost=np.zeros((3, shifts)),
        money=np.zeros(2),
        tally=np.ones(2, np.int64),
        luck=dice.integers(1, 2**62, 1, dtype=np.uint64),
        home=np.full(jobs, -1, np.int64),
        marks=np.zeros((2, jobs), np.int64),
        keys=np.zeros(jobs),
        ready_by=np.zeros((shifts, r), np.int64),
        figures=np.zeros(((shifts * r + 2) * ROW, 3), np.int64),
        late=np.zeros((shifts * r + 2) * ROW),
        many=np.zeros((shifts * r + 2, 2), np.int64),
        spot=np.full((jobs, shifts, 2), -1, np.int64),
        extra=np.zeros((jobs, shifts)),
        pool_key=np.zeros(pool, np.uint64),
        pool_cost=np.zeros(pool),
        pool_day=np.zeros((pool, r + 2), np.int16),
        signs=dice.integers(1, 2**63, shifts + jobs, dtype=np.uint64),
    )


@compiled
def chance(luck: NDArray[np.uint64]) -> float:
    """The next number from 0 to 1 (xorshift64*, Vigna 2016)."""
    x = luck[0]
    x ^= x >> np.uint64(12)
    x ^= x << np.uint64(25)
    x ^= x >> np.uint64(27)
    luck[0] = x
    return float(((x * np.uint64(2685821657736338717)) >> np.uint64(11)) * (1.0 / 9007199254740992.0))


@compiled
def pick(luck: NDArray[np.uint64], most: int) -> int:
    """A whole number from 0 to most - 1."""
    return min(most - 1, int(chance(luck) * most))


@compiled
def copy_shift(desk: Desk, start: int, end: int, shift: int) -> None:
    """One shift's order, sums and cost from one place of the desk to another (NOW, OLD, TOP)."""
    for i in range(desk.now[start, shift, SIZE]):
        desk.order[end, shift, i] = desk.order[start, shift, i]
    for column in range(STAMP + 1):
        desk.now[end, shift, column] = desk.now[start, shift, column]
    desk.cost[end, shift] = desk.cost[start, shift]


@compiled
def touch(desk: Desk, shift: int) -> None:
    """Remember the shift as it was before this step."""
    if not desk.now[NOW, shift, TOUCHED]:
        desk.now[NOW, shift, TOUCHED] = 1
        copy_shift(desk, NOW, OLD, shift)


@compiled
def settle(week: WeekArrays, desk: Desk, shift: int) -> None:
    """New sums and a new stamp after the shift's order changed (its cost is set by the caller)."""
    base = week.shift[shift, PLACE]
    here, cows, metres, busy, size = base, 0, 0, 0, desk.now[NOW, shift, SIZE]
    for i in range(size):
        job = desk.order[NOW, shift, i]
        place = week.job[job, WHERE]
        metres += week.metres[here, place]
        busy += week.times[here, place] + week.job[job, LENGTH]
        cows += week.job[job, COWS]
        here = place
    desk.tally[0] += 1
    desk.now[NOW, shift, LOAD] = cows
    desk.now[NOW, shift, ROAD] = metres + week.metres[here, base] if size else 0
    desk.now[NOW, shift, BUSY] = busy + week.times[here, base] if size else 0
    desk.now[NOW, shift, STAMP] = desk.tally[0] if size else 0


@compiled
def undo(desk: Desk) -> None:
    """The week as it was before this step."""
    shifts = desk.now.shape[1]
    for s in range(shifts):
        if desk.now[NOW, s, TOUCHED]:
            for i in range(desk.now[NOW, s, SIZE]):
                desk.home[desk.order[NOW, s, i]] = -1
    for s in range(shifts):
        if desk.now[NOW, s, TOUCHED]:
            copy_shift(desk, OLD, NOW, s)
            for i in range(desk.now[NOW, s, SIZE]):
                desk.home[desk.order[NOW, s, i]] = s


@compiled
def keep_best(desk: Desk) -> None:
    """The present week is the best."""
    desk.money[BEST] = desk.money[PRESENT]
    for s in range(desk.now.shape[1]):
        copy_shift(desk, NOW, TOP, s)


@compiled
def keep_days(week: WeekArrays, desk: Desk) -> None:
    """Put the days changed in this step into the pool of days seen."""
    most, shifts = desk.pool_key.shape[0], desk.now.shape[1]
    for s in range(shifts if most else 0):
        size = desk.now[NOW, s, SIZE]
        if not desk.now[NOW, s, TOUCHED] or size == 0:
            continue
        key = desk.signs[week.shift[s, CLASS]]
        for i in range(size):
            key ^= desk.signs[shifts + desk.order[NOW, s, i]]
        slot = int(key % np.uint64(most))
        if desk.pool_key[slot] == key and desk.pool_cost[slot] <= desk.cost[NOW, s]:
            continue
        desk.pool_key[slot], desk.pool_cost[slot] = key, desk.cost[NOW, s]
        desk.pool_day[slot, 0], desk.pool_day[slot, 1] = s, size
        for i in range(size):
            desk.pool_day[slot, i + 2] = desk.order[NOW, s, i]


@compiled
def price(week: WeekArrays, desk: Desk) -> float:
    """Cost of the present week."""
    total = 0.0
    for s in range(desk.now.shape[1]):
        total += desk.cost[NOW, s]
    for j in range(desk.home.shape[0]):
        if desk.home[j] < 0:
            total += week.out[j]
    return total
