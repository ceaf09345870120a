"""Which labels need not be looked at further, in machine code.

Of two labels with the same last job, the one that is free no later, has done no job that the other still could do,
and costs no more even when all that it may take longer is paid for, is as good in every day. Only where it could
break the limit of work that the other keeps, it must not take longer at all.
"""

from typing import TYPE_CHECKING

import numpy as np

from visits.domain.planning.compiled import compiled
from visits.domain.planning.exact.label_store import (
    COWS,
    EVERY,
    FED,
    JOB,
    LEAVE,
    LOOSE,
    SAFE,
    STRICT,
    TIME,
    TINY,
    TWINS,
    WORK,
    Search,
    bit,
    keep,
)
from visits.domain.planning.exact.shift_arrays import ShiftArrays

if TYPE_CHECKING:
    from numpy import uint64


@compiled
def reach(day: ShiftArrays, search: Search, label: int) -> "uint64":
    """Jobs that no longer can follow, as bits: done and remembered, too late, too clean, or too many cows."""
    shut = search.seen[label]
    here, time = search.who[label, JOB], search.figures[label, TIME]
    jobs = day.length.shape[0]
    for job in range(jobs):
        late = time + day.soonest[here, job] > day.closes[job]
        if (
            late
            or (here < jobs and day.level[job] < day.level[here])
            or search.figures[label, COWS] + day.cows[job] > day.most_cows
        ):
            shut |= bit(job)
    return np.uint64(shut)


@compiled
def beaten_in(day: ShiftArrays, search: Search, bucket: int, label: int, shut: "uint64") -> bool:
    """Whether a settled label of that bucket makes this one needless."""
    figures, cost = search.figures[label], search.cost[label] + TINY
    for at in range(search.settled_count[bucket]):
        if search.settled_cost[bucket, at] > cost:
            return False
        if search.way == STRICT and search.settled_seen[bucket, at] & ~shut:
            continue
        other = search.settled[bucket, at]
        if search.way == STRICT and other[COWS - 1] > figures[COWS]:
            continue
        longer = max(0, other[0] - figures[WORK], figures[LEAVE] - other[1])
        if longer == 0:
            return True
        if (other[SAFE] or search.way == LOOSE) and search.settled_cost[
            bucket, at
        ] + day.rate * longer <= cost:
            return True
    return False


@compiled
def settle(day: ShiftArrays, search: Search, label: int) -> None:
    """Let the label beat others from now on."""
    if search.way == EVERY:
        hang(search, label)
    else:
        cows = 0 if keeps_cows(day, search, label) else search.figures[label, COWS]
        keep(search, label, search.figures[label, WORK], cows, keeps_work(day, search, label))


@compiled
def keeps_work(day: ShiftArrays, search: Search, label: int) -> bool:
    """Whether no day that begins like this can break the limit of work."""
    time, work, leave, _ = search.figures[label]
    return bool(day.end - min(leave, time - work) <= day.most_work)


@compiled
def keeps_cows(day: ShiftArrays, search: Search, label: int) -> bool:
    """Whether the time left is too short for so many cows that the limit could break."""
    more = (day.end - search.figures[label, TIME]) * day.cow_pace
    return bool(search.figures[label, COWS] + more <= day.most_cows)


@compiled
def place_of(seen: "uint64", job: int, fed: int) -> int:
    """Where labels of these jobs done, this last job and meal hang."""
    key = seen * np.uint64(0x9E3779B97F4A7C15) + np.uint64(2 * job + fed) * np.uint64(0xC2B2AE3D27D4EB4F)
    return int((key >> np.uint64(40)) % np.uint64(TWINS))


@compiled
def beaten_by_twin(day: ShiftArrays, search: Search, label: int, fed: int) -> bool:
    """Whether a settled label with the same jobs done and the same last one makes this one needless."""
    _, work, leave, _ = search.figures[label]
    job, cost = search.who[label, JOB], search.cost[label] + TINY
    twin = search.first_twin[place_of(search.seen[label], job, fed)]
    while twin >= 0:
        same = search.seen[twin] == search.seen[label] and search.who[twin, JOB] == job
        if same and search.who[twin, FED] == fed and search.cost[twin] <= cost:
            longer = max(0, search.figures[twin, WORK] - work, leave - search.figures[twin, LEAVE])
            if (longer == 0 or keeps_work(day, search, twin)) and search.cost[
                twin
            ] + day.rate * longer <= cost:
                return True
        twin = search.next_twin[twin]
    return False


@compiled
def hang(search: Search, label: int) -> None:
    """Settle a label among those with the same jobs done."""
    place = place_of(search.seen[label], search.who[label, JOB], search.who[label, FED])
    search.next_twin[label] = search.first_twin[place]
    search.first_twin[place] = label


@compiled
def beaten(day: ShiftArrays, search: Search, label: int, shut: "uint64") -> bool:
    """Whether this label need not be looked at further."""
    job, fed = search.who[label, JOB], search.who[label, FED]
    if search.way == EVERY:
        return beaten_by_twin(day, search, label, 1) or (not fed and beaten_by_twin(day, search, label, 0))
    if beaten_in(day, search, 2 * job + 1, label, shut):
        return True
    return not fed and beaten_in(day, search, 2 * job, label, shut)
