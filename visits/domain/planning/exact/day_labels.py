"""The cheapest days of one shift at given prices of the jobs, in machine code.

Labels are settled in order of T, so that whatever could beat a label is settled before it; one that no completion
brings below the limit is not made at all.
"""

from typing import TYPE_CHECKING

import numpy as np

from visits.domain.planning.compiled import compiled
from visits.domain.planning.exact.dominance import beaten, reach, settle
from visits.domain.planning.exact.label_store import (
    COWS,
    DONE,
    FED,
    FULL,
    JOB,
    WAITING,
    Search,
    bit,
    has,
    make,
    soonest,
)
from visits.domain.planning.exact.shift_arrays import Floats, ShiftArrays

if TYPE_CHECKING:
    from numpy import uint64


@compiled
def start(day: ShiftArrays, search: Search) -> None:
    """The labels at the base."""
    base, none = day.length.shape[0], np.uint64(0)
    if day.fed_leave <= day.end:
        make(search, base, 1, -1, day.fed_leave, 0, day.end, 0, day.fixed, none)
    if day.meal >= 0 and day.fed_leave > 0:
        make(search, base, 0, -1, 0, 0, min(day.fed_leave - 1, day.end), 0, day.fixed, none)


@compiled
def hopeful(back: Search, job: int, fed: int, time: int, seen: "uint64", room: float) -> bool:
    """Whether a completion from there costs less than `room` and does no job twice."""
    bucket, others = 2 * job + fed, seen & ~bit(job)
    for at in range(back.settled_count[bucket]):
        if back.settled_cost[bucket, at] >= room:
            return False
        if back.settled[bucket, at, 0] >= time and not back.settled_seen[bucket, at] & others:
            return True
    return False


@compiled
def arrive(
    day: ShiftArrays,
    search: Search,
    back: Search,
    label: int,
    job: int,
    fed: int,
    ready: int,
    work: int,
    leave: int,
    price: float,
    limit: float,
) -> None:
    """The labels that come of being ready at the job, one for each opening."""
    home = day.soonest[job, day.length.shape[0]]
    length = day.length[job]
    cost = search.cost[label] + day.road[search.who[label, JOB], job] - price
    seen = search.seen[label] | bit(job)
    for at in range(day.open_at[job], day.open_at[job + 1]):
        closes = day.open_last[at]
        if ready > closes:
            continue
        time = max(ready, day.open_first[at]) + length
        last = min(leave, closes - work)
        away = max(work + length, time - last) + home
        if time + home > day.end or away > day.most_work or (not fed and time > day.latest):
            continue
        late = cost + day.open_late[at]
        room = limit - late - day.rate * max(work + length, time - last)
        if hopeful(back, job, fed, time, seen, room):
            cows = search.figures[label, COWS] + day.cows[job]
            make(search, job, fed, label, time, work + length, last, cows, late, seen)


@compiled
def follow(
    day: ShiftArrays, search: Search, back: Search, label: int, job: int, price: float, limit: float
) -> None:
    """Drive to the job, with the meal there, before the drive, or not on this leg."""
    time, work, leave, _ = search.figures[label]
    here, fed = search.who[label, JOB], search.who[label, FED]
    leg, meal = day.drive[here, job], day.meal
    arrive(day, search, back, label, job, fed, time + leg, work + leg, leave, price, limit)
    if fed:
        return
    if time + leg <= day.latest:
        ready, last = max(time + leg, day.earliest) + meal, min(leave, day.latest - work - leg)
        arrive(day, search, back, label, job, 1, ready, work + leg + meal, last, price, limit)
    if here < day.length.shape[0] and time <= day.latest:
        ready, last = max(time, day.earliest) + meal + leg, min(leave, day.latest - work)
        arrive(day, search, back, label, job, 1, ready, work + leg + meal, last, price, limit)


@compiled
def away(day: ShiftArrays, time: int, work: int, leave: int) -> int:
    """Least time away of a label that is home again; -1 where it breaks a limit."""
    least = max(work, time - leave)
    return -1 if time > day.end or least > day.most_work else least


@compiled
def least_away(day: ShiftArrays, time: int, work: int, leave: int, fed: int, leg: int) -> int:
    """Least time away when going home now; -1 where no way keeps the rules."""
    if fed:
        return away(day, time + leg, work + leg, leave)
    best = -1
    by = day.earliest
    if day.earliest + day.meal <= day.end:
        by = max(by, min(day.latest, day.end - day.meal))
    if time + leg <= by:
        best = away(day, time + leg, work + leg, min(leave, by - work - leg))
    if time <= day.latest:
        last = min(leave, day.latest - work)
        other = away(day, max(time, day.earliest) + day.meal + leg, work + day.meal + leg, last)
        best = other if best < 0 or 0 <= other < best else best
    return best


@compiled
def go_home(day: ShiftArrays, search: Search, label: int, limit: float) -> float:
    """Note the day that ends with this label, if it is below the limit; its cost less prices."""
    time, work, leave, _ = search.figures[label]
    here, base = search.who[label, JOB], day.length.shape[0]
    least = least_away(day, time, work, leave, search.who[label, FED], day.drive[here, base])
    if least < 0:
        return np.inf
    cost = search.cost[label] + day.road[here, base] + day.rate * least
    if cost < limit:
        if search.counts[DONE] >= search.home.shape[0]:
            search.counts[FULL] = 2
            return float(cost)
        search.home[search.counts[DONE]] = label
        search.home_cost[search.counts[DONE]] = cost
        search.counts[DONE] += 1
    return float(cost)


@compiled
def run(day: ShiftArrays, search: Search, back: Search, prices: Floats, limit: float) -> float:
    """Settle every label that may lead to a day below the limit; returns the least cost less prices of those days.
    `search.counts[FULL]` tells where there was no room."""
    best, base = np.inf, day.length.shape[0]
    start(day, search)
    while search.counts[WAITING] > 0 and search.counts[FULL] == 0:
        label = soonest(search)
        here = search.who[label, JOB]
        shut = reach(day, search, label)
        if here < base:
            if beaten(day, search, label, shut):
                continue
            best = min(best, go_home(day, search, label, limit))
            settle(day, search, label)
        for job in range(base):
            if not has(shut, job):
                follow(day, search, back, label, job, prices[job], limit)
    return best
