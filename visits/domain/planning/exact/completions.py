"""What finishing a day must still cost at given prices, from each job on: labels backwards in time, machine code.

A completion says how late the crew may be free at a job (`by`), whether it has eaten by then, and what the rest
costs less prices, waits not counted. Sorted by cost, the first that fits a label is a bound for all its days.
Completions remember the jobs done as far as `memory` of the stops before says (ng-routes: Baldacci, Mingozzi and
Roberti 2011, from memory): a job may come twice, which can only make them cheaper.
"""

from typing import TYPE_CHECKING

import numpy as np

from visits.domain.planning.compiled import compiled
from visits.domain.planning.exact.label_store import (
    FED,
    FULL,
    JOB,
    TIME,
    TINY,
    WAITING,
    Bits,
    Search,
    bit,
    has,
    keep,
    make,
    soonest,
)
from visits.domain.planning.exact.shift_arrays import Floats, Ints, ShiftArrays

if TYPE_CHECKING:
    from numpy import uint64


@compiled
def homeward(day: ShiftArrays, search: Search, job: int) -> None:
    """The ways home from a job."""
    base = day.length.shape[0]
    leg = day.drive[job, base]
    cost = day.road[job, base] + day.rate * leg
    one = bit(job)
    make(search, job, 1, -1, -(day.end - leg), 0, 0, 0, cost, one)
    if day.meal < 0:
        return
    by = day.earliest
    if day.earliest + day.meal <= day.end:
        by = max(by, min(day.latest, day.end - day.meal))
    make(search, job, 0, -1, -(min(by, day.end) - leg), 0, 0, 0, cost, one)
    if day.earliest + day.meal + leg <= day.end:
        by = min(day.latest, day.end - leg - day.meal)
        make(search, job, 0, -1, -by, 0, 0, 0, cost + day.rate * day.meal, one)


@compiled
def precede(
    day: ShiftArrays, search: Search, label: int, job: int, ready: int, cost: float, memory: "uint64"
) -> None:
    """Be at the label's job, which `ready` at the latest, straight from `job`, with a meal between or without."""
    there, fed = search.who[label, JOB], search.who[label, FED]
    leg, meal = day.drive[job, there], day.meal
    cost += day.road[job, there] + day.rate * leg
    seen = (search.seen[label] & memory) | bit(job)
    make(search, job, fed, label, -(ready - leg), 0, 0, 0, cost, seen)
    if not fed or meal < 0:
        return
    if ready - meal >= day.earliest:
        by = min(day.latest, ready - meal) - leg
        make(search, job, 0, label, -by, 0, 0, 0, cost + day.rate * meal, seen)
    if ready - leg - meal >= day.earliest:
        by = min(day.latest, ready - leg - meal)
        make(search, job, 0, label, -by, 0, 0, 0, cost + day.rate * meal, seen)


@compiled
def needless(search: Search, bucket: int, label: int, shut: "uint64") -> bool:
    """Whether a settled completion, which lets the crew be later, costs no more and asks no more."""
    cost = search.cost[label] + TINY
    for at in range(search.settled_count[bucket]):
        if search.settled_cost[bucket, at] > cost:
            return False
        if not search.settled_seen[bucket, at] & ~shut:
            return True
    return False


@compiled
def first_finish(day: ShiftArrays) -> Ints:
    """The earliest that each job can be finished, wherever the crew was before; -1 where it cannot be done."""
    jobs = day.length.shape[0]
    first = np.full(jobs, -1)
    for job in range(jobs):
        for at in range(day.open_at[job], day.open_at[job + 1]):
            ready = max(day.soonest[jobs, job], day.open_first[at])
            if first[job] < 0 and ready <= day.open_last[at]:
                first[job] = ready + day.length[job]
    return first


@compiled
def before(day: ShiftArrays, search: Search, label: int, first: Ints) -> "uint64":
    """Jobs that cannot come before, as bits: done and remembered, too late, or too dirty."""
    here, shut = search.who[label, JOB], search.seen[label]
    begin = -search.figures[label, TIME] - day.length[here]
    for job in range(first.shape[0]):
        late = first[job] < 0 or begin - day.soonest[job, here] < first[job]
        if late or day.level[job] > day.level[here]:
            shut |= bit(job)
    return np.uint64(shut)


@compiled
def complete(day: ShiftArrays, search: Search, prices: Floats, memory: Bits) -> None:
    """Settle every completion of every job."""
    jobs = day.length.shape[0]
    first = first_finish(day)
    for job in range(jobs):
        if first[job] >= 0:
            homeward(day, search, job)
    while search.counts[WAITING] > 0 and search.counts[FULL] != 1:
        label = soonest(search)
        here, by = search.who[label, JOB], -search.figures[label, TIME]
        if by < first[here]:
            continue
        shut = before(day, search, label, first)
        bucket = 2 * here + search.who[label, FED]
        if needless(search, bucket, label, shut):
            continue
        keep(search, label, by, 0, 0)
        for at in range(day.open_at[here], day.open_at[here + 1]):
            ready = min(day.open_last[at], by - day.length[here])
            if ready < day.open_first[at]:
                continue
            cost = search.cost[label] + day.rate * day.length[here] + day.open_late[at] - prices[here]
            for job in range(jobs):
                if not has(shut, job):
                    precede(day, search, label, job, ready, cost, memory[job])


@compiled
def least_day(day: ShiftArrays, back: Search, prices: Floats) -> float:
    """A cost less prices that no day undercuts: the first job, then its cheapest completion."""
    base, best = day.length.shape[0], np.inf
    for job in range(base):
        leg = day.drive[base, job]
        for fed in range(2):
            if fed == 0 and day.meal < 0:
                continue
            leave = day.fed_leave if fed else 0
            cost = day.fixed + day.road[base, job] + day.rate * (leg + day.length[job]) - prices[job]
            for at in range(day.open_at[job], day.open_at[job + 1]):
                ready = max(leave + leg, day.open_first[at])
                if ready <= day.open_last[at]:
                    rest = cheapest(back, 2 * job + fed, ready + day.length[job])
                    best = min(best, cost + day.open_late[at] + rest)
            if fed == 0 and day.earliest <= day.latest and leg <= day.latest:
                best = min(best, cost + day.rate * day.meal + eaten_first(day, back, job, leg))
    return best


@compiled
def eaten_first(day: ShiftArrays, back: Search, job: int, leg: int) -> float:
    """The cheapest lateness and completion for a crew that eats at its first job before it begins."""
    best, after = np.inf, max(leg, day.earliest) + day.meal
    for at in range(day.open_at[job], day.open_at[job + 1]):
        ready = max(after, day.open_first[at])
        if ready <= day.open_last[at]:
            best = min(best, day.open_late[at] + cheapest(back, 2 * job + 1, ready + day.length[job]))
    return best


@compiled
def cheapest(back: Search, bucket: int, time: int) -> float:
    """The least cost of a settled completion that lets the crew be free at `time`."""
    for at in range(back.settled_count[bucket]):
        if back.settled[bucket, at, 0] >= time:
            return float(back.settled_cost[bucket, at])
    return np.inf
