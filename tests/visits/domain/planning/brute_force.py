"""The best cost of a small week by trying everything on a grid of time: slow, plain, sharing no solver code.

Every figure of the problem must be a multiple of STEP minutes, so that a best plan lies on the grid.
"""

from datetime import datetime, timedelta
from itertools import pairwise
from typing import NamedTuple
from zoneinfo import ZoneInfo

STEP = 30
TENTH = timedelta(seconds=0.1)
NEVER = float("inf")


class Walk(NamedTuple):
    """A way through the jobs so far: when the crew left, its meal, when it is free, and the starts."""

    leave: datetime
    gap: tuple[datetime, datetime] | None
    free: datetime
    starts: tuple[datetime, ...]


def best_cost(problem):
    """(jobs that must be planned but are not, promises not kept, cost) of the best plan."""
    jobs = problem["jobs"]
    names = [job["id"] for job in jobs]
    shared = {frozenset(): 0.0}
    for shift in problem["shifts"]:
        sets = cheapest_sets(problem, shift)
        grown = {}
        for used, cost in shared.items():
            for taken, more in sets.items():
                if not used & taken:
                    both = used | taken
                    grown[both] = min(grown.get(both, float("inf")), cost + more)
        shared = grown
    return min((*left(jobs, used, cost),) for used, cost in shared.items() if used <= set(names))


def left(jobs, used, cost):
    out = [job for job in jobs if job["id"] not in used]
    musts = sum("leave_out_cost" not in job or "fixed" in job for job in out)
    promises = sum("fixed" in job for job in out)
    return musts, promises, round(cost + sum(job.get("leave_out_cost", 0) for job in out), 4)


def cheapest_sets(problem, shift):
    """Cheapest cost of each set of jobs this shift can do: every order, leaving time and place of the meal."""
    best = {frozenset(): 0.0}
    able = [job for job in problem["jobs"] if "crews" not in job or shift["crew"] in job["crews"]]
    grow(problem, shift, able, (), ways_out(shift, able), best)
    return best


def cheapest_round(problem, shift, order):
    """Cheapest cost of this order over every leaving time and every place of the meal, or None."""
    walks, done = ways_out(shift, order), ()
    for job in order:
        if not may_share(problem, shift, (*done, job)):
            return None
        walks = [walk for each in walks if (walk := step(problem, shift, done, job, each)) is not None]
        done = (*done, job)
    cost = min((whole_cost(problem, shift, order, walk) for walk in walks), default=NEVER)
    return None if cost == NEVER else cost


def ways_out(shift, able):
    """Every leaving time with every meal, before the first drive."""
    start, end = datetime.fromisoformat(shift["start"]), datetime.fromisoformat(shift["end"])
    dated = any("due" in job for job in able)
    leaves = [(leave, gap) for leave in grid(start, end, dated) for gap in gaps(shift, start, end, dated)]
    return [Walk(leave, gap, leave, ()) for leave, gap in leaves]


def grow(problem, shift, able, order, walks, best):
    """Every longer order that some walk can still do; a job that cannot follow ends the branch."""
    for job in able:
        longer = (*order, job)
        if job in order or not may_share(problem, shift, longer):
            continue
        gone = [walk for each in walks if (walk := step(problem, shift, order, job, each)) is not None]
        key = frozenset(each["id"] for each in longer)
        cost = min((whole_cost(problem, shift, longer, walk) for walk in gone), default=NEVER)
        if cost < best.get(key, NEVER):
            best[key] = cost
        if gone:
            grow(problem, shift, able, longer, gone, best)


def may_share(problem, shift, order):
    """Whether hygiene and cows let these jobs share the shift in this order."""
    sites = {site["id"]: site.get("hygiene", 0) for site in problem["sites"]}
    levels = [sites[job["site"]] for job in order]
    return levels == sorted(levels) and sum(job.get("cows", 0) for job in order) <= shift.get(
        "max_cows", 10**9
    )


def grid(first, last, dated):
    """The grid, and a tenth of a second before each point where the day of a start has a price."""
    moment = first
    while moment <= last:
        if dated and moment > first:
            yield moment - TENTH
        yield moment
        moment += timedelta(minutes=STEP)


def gaps(shift, start, end, dated):
    """None (no meal), and every meal on the grid."""
    yield None
    if meal := shift.get("meal"):
        first, last = datetime.fromisoformat(meal["earliest"]), datetime.fromisoformat(meal["latest"])
        for begin in grid(first, last, dated):
            stop = begin + timedelta(minutes=meal["minutes"])
            if begin >= start and stop <= end:
                yield begin, stop


def keeps_limits(shift, leave, back, end, gap):
    if back > end or back - leave > timedelta(minutes=shift.get("max_work_minutes", 10**6)):
        return False
    if gap is None and (meal := shift.get("meal")):
        first, last = datetime.fromisoformat(meal["earliest"]), datetime.fromisoformat(meal["latest"])
        return leave >= last or back <= first
    return True


def pushed(begin, length, gap):
    """The earliest begin at or after `begin` of something that may not overlap the gap."""
    if gap and length and begin < gap[1] and begin + length > gap[0]:
        return gap[1]
    return begin


def step(problem, shift, order, job, walk):
    """The walk with the job done as early as possible round the gap, or None."""
    here = order[-1]["site"] if order else shift["base"]
    drive, length = minutes(problem, here, job["site"]), timedelta(minutes=job["minutes"])
    sets_off = pushed(walk.free, drive, walk.gap)
    if not order and sets_off != walk.leave:
        return None
    start = first_start(job, sets_off + drive, length, walk.gap)
    if start is None:
        return None
    return Walk(walk.leave, walk.gap, start + length, (*walk.starts, start))


def whole_cost(problem, shift, order, walk):
    """What the round costs when the crew now drives home, or NEVER where a limit is broken."""
    drive = minutes(problem, order[-1]["site"], shift["base"])
    back = pushed(walk.free, drive, walk.gap) + drive
    if not keeps_limits(shift, walk.leave, back, datetime.fromisoformat(shift["end"]), walk.gap):
        return NEVER
    return price(problem, shift, order, walk.leave, back, walk.starts)


def first_start(job, ready, length, gap):
    """The earliest start inside one window, or None."""
    promised = job.get("fixed")
    options = []
    for window in job["windows"]:
        first, last = datetime.fromisoformat(window["start"]), datetime.fromisoformat(window["end"])
        start = max(ready, first)
        if promised:
            start = max(start, datetime.fromisoformat(promised["start"]))
        start = pushed(start, length, gap)
        if start + length <= last and (not promised or start == datetime.fromisoformat(promised["start"])):
            options.append(start)
    return min(options, default=None)


def minutes(problem, here, there):
    places = problem["travel"]["places"]
    value = problem["travel"]["minutes"][places.index(here)][places.index(there)]
    return timedelta(minutes=0 if here == there else value)


def km(problem, here, there):
    places = problem["travel"]["places"]
    return 0 if here == there else problem["travel"]["km"][places.index(here)][places.index(there)]


def price(problem, shift, order, leave, back, starts):
    zone = ZoneInfo(problem["timezone"])
    stops = [shift["base"], *(job["site"] for job in order), shift["base"]]
    road = sum(km(problem, a, b) for a, b in pairwise(stops))
    cost = shift.get("cost_fixed", 0) + road * shift.get("cost_per_km", 0)
    cost += (back - leave).total_seconds() / 3600 * shift.get("cost_per_work_hour", 0)
    for job, start in zip(order, starts, strict=True):
        if "due" in job:
            due = datetime.fromisoformat(job["due"]).date()
            cost += max(0, (start.astimezone(zone).date() - due).days) * job.get("late_cost_per_day", 0)
    for job in order:
        if "fixed" in job and job["fixed"]["shift"] != shift["id"]:
            return float("inf")
    return cost
