"""Ruin and recreate in machine code: neighbouring strings of jobs out of their days, back in at exact cost.

After Christiaens and Vanden Berghe 2020 (slack induction by string removals), from memory; exact timing, jobs left
out at a price, and the memory of each job's best place in each shift are ours.
"""

import numpy as np

from visits.domain.planning.compiled import compiled
from visits.domain.planning.swift.arrays import Ints, WeekArrays
from visits.domain.planning.swift.columns import CLASS, LENGTH, PLACE, SIZE, STAMP, TOUCHED, WHERE
from visits.domain.planning.swift.machine_desk import (
    BEST,
    NOW,
    PRESENT,
    Desk,
    chance,
    keep_best,
    keep_days,
    pick,
    price,
    settle,
    touch,
    undo,
)
from visits.domain.planning.swift.machine_spots import find_spot, order_cost, put_in
from visits.domain.planning.swift.machine_timing import INF

STRING, STRINGS_OUT = 10, 10
BLINK = 0.01
PASS_OVER = 0.15
SETTLED = 1e-7
OUT, WAITING = 0, 1


@compiled
def close_up(week: WeekArrays, desk: Desk, shift: int) -> bool:
    """Drop the jobs marked out from the shift. False where the rest breaks a rule (a meal may)."""
    kept, order = 0, desk.order[NOW, shift]
    for i in range(desk.now[NOW, shift, SIZE]):
        if desk.marks[OUT, order[i]] == 0:
            order[kept] = order[i]
            kept += 1
    desk.now[NOW, shift, SIZE] = kept
    settle(week, desk, shift)
    desk.cost[NOW, shift] = order_cost(week, desk, shift, order, kept)
    return bool(desk.cost[NOW, shift] < INF)


@compiled
def mark_string(desk: Desk, job: int, shift: int, longest: float) -> None:
    """Mark a string of the shift that holds the job; at times with a piece in its middle kept."""
    touch(desk, shift)
    size, order = desk.now[NOW, shift, SIZE], desk.order[NOW, shift]
    length = min(size, int(chance(desk.luck) * min(float(size), longest) + 1.0))
    spot = 0
    for i in range(size):
        if order[i] == job:
            spot = i
    kept = 0
    if 1 < length < size and chance(desk.luck) < 0.5:
        kept = 1
        while length + kept < size and chance(desk.luck) > 0.5:
            kept += 1
    whole = length + kept
    low, high = max(0, spot - whole + 1), min(spot, size - whole)
    first = low + pick(desk.luck, high - low + 1)
    hole = first + pick(desk.luck, length) if kept else -1
    for i in range(first, first + whole):
        if not kept or order[i] == job or not hole <= i < hole + kept:
            desk.marks[OUT, order[i]] = 1


@compiled
def take_out(week: WeekArrays, desk: Desk) -> int:
    """Strings of jobs around one job out of their shifts; how many jobs wait now, or -1 for no step."""
    shifts, jobs = desk.now.shape[1], desk.home.shape[0]
    placed = used = waiting = done = 0
    for s in range(shifts):
        placed += desk.now[NOW, s, SIZE]
        used += desk.now[NOW, s, SIZE] > 0
    for j in range(jobs):
        desk.marks[OUT, j] = 0
    longest = min(float(STRING), placed / max(1, used))
    goal = int(chance(desk.luck) * (4.0 * STRINGS_OUT / (1.0 + longest) - 1.0) + 1.0)
    seed = pick(desk.luck, jobs)
    for k in range(jobs):
        shift = desk.home[week.near[seed, k]]
        if shift >= 0 and not desk.now[NOW, shift, TOUCHED]:
            mark_string(desk, week.near[seed, k], shift, longest)
            done += 1
            if done >= goal:
                break
    for s in range(shifts):
        if desk.now[NOW, s, TOUCHED] and not close_up(week, desk, s):
            return -1
    for j in range(jobs):
        if desk.marks[OUT, j]:
            desk.home[j] = -1
        if desk.home[j] < 0:
            desk.marks[WAITING, waiting] = j
            waiting += 1
    return waiting


@compiled
def sort_key(week: WeekArrays, desk: Desk, job: int, way: float) -> float:
    """By which the waiting line up: at random, longest first, farthest or nearest first, least room first."""
    key = chance(desk.luck)
    far = float(week.times[week.shift[0, PLACE], week.job[job, WHERE]])
    if way < 0.35:
        return key
    if way < 0.55:
        return -float(week.job[job, LENGTH]) * (1.0 + 0.1 * key)
    if way < 0.65:
        return -far
    if way < 0.7:
        return far
    if way < 0.8:
        return float(-week.out[job] / (1.0 + week.job[job, LENGTH]) * (1.0 + 0.2 * key))
    if way < 0.9:
        return -float(week.out[job])
    jobs, room = desk.home.shape[0], 0
    for s in range(desk.now.shape[1]):
        for o in range(week.open_at[s * jobs + job], week.open_at[s * jobs + job + 1]):
            room += week.opens[o, 1] - week.opens[o, 0] + 1
    return float(room)


@compiled
def line_up(week: WeekArrays, desk: Desk, waiting: int) -> None:
    """Sort those who wait."""
    way, line = chance(desk.luck), desk.marks[WAITING]
    for i in range(waiting):
        desk.keys[i] = sort_key(week, desk, line[i], way)
    for i in range(1, waiting):
        job, key, k = line[i], desk.keys[i], i - 1
        while k >= 0 and desk.keys[k] > key:
            line[k + 1], desk.keys[k + 1] = line[k], desk.keys[k]
            k -= 1
        line[k + 1], desk.keys[k + 1] = job, key


@compiled
def put_back(week: WeekArrays, desk: Desk, waiting: int) -> None:
    """Each waiting job into its cheapest place, where that beats leaving it out."""
    shy = chance(desk.luck) < 0.3
    for i in range(waiting):
        job = desk.marks[WAITING, i]
        best, best_shift, empty_seen = week.out[job], -1, -1
        if shy and chance(desk.luck) < PASS_OVER:
            continue
        for s in range(desk.now.shape[1]):
            if desk.now[NOW, s, SIZE] == 0:
                if week.shift[s, CLASS] == empty_seen:
                    continue
                empty_seen = week.shift[s, CLASS]
            if desk.spot[job, s, 0] != desk.now[NOW, s, STAMP]:
                find_spot(week, desk, job, s)
            if desk.extra[job, s] < best and chance(desk.luck) > BLINK:
                best, best_shift = desk.extra[job, s], s
        if best_shift >= 0:
            put_in(week, desk, job, best_shift)


@compiled
def load(week: WeekArrays, desk: Desk, orders: Ints, sizes: Ints) -> None:
    """Begin with these orders; one that breaks a rule is emptied."""
    desk.home[:] = -1
    for s in range(desk.now.shape[1]):
        desk.order[NOW, s, : sizes[s]] = orders[s, : sizes[s]]
        desk.now[NOW, s, SIZE] = sizes[s]
        desk.cost[NOW, s] = order_cost(week, desk, s, desk.order[NOW, s], sizes[s])
        if desk.cost[NOW, s] >= INF:
            desk.now[NOW, s, SIZE], desk.cost[NOW, s] = 0, 0.0
        for i in range(desk.now[NOW, s, SIZE]):
            desk.home[desk.order[NOW, s, i]] = s
        settle(week, desk, s)
        desk.now[NOW, s, TOUCHED] = 1
    keep_days(week, desk)
    desk.money[PRESENT] = price(week, desk)
    keep_best(desk)


@compiled
def go_on(week: WeekArrays, desk: Desk, steps: int, hot: float, cold: float) -> None:
    """So many steps; the heat falls from `hot` to `cold` (money) geometrically."""
    cooling, heat = (cold / hot) ** (1.0 / max(1, steps)), hot
    for _ in range(steps):
        desk.tally[1] += 1
        heat *= cooling
        desk.now[NOW, :, TOUCHED] = 0
        waiting = take_out(week, desk)
        if waiting < 0:
            undo(desk)
            continue
        line_up(week, desk, waiting)
        put_back(week, desk, waiting)
        cost = price(week, desk)
        if cost >= desk.money[PRESENT] - heat * np.log(1e-12 + chance(desk.luck)):
            undo(desk)
            continue
        desk.money[PRESENT] = cost
        keep_days(week, desk)
        if cost < desk.money[BEST] - SETTLED:
            keep_best(desk)
