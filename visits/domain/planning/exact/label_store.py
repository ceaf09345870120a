"""Labels of one search in machine code: made, waiting in order of time, settled.

A label is a way through some stops: last job, earliest finish T, work without waits W, latest leaving L, cost less
prices. Leaving at `leave` <= L the crew is free at max(T, leave + W); home again, the least time away is
max(W, T - L). After Tilk and Irnich 2017 (minimum tour duration), from memory; meal and openings are branches.
"""

from typing import TYPE_CHECKING, NamedTuple, TypeAlias

import numpy as np

from visits.domain.planning.compiled import compiled
from visits.domain.planning.exact.shift_arrays import Floats, Ints

if TYPE_CHECKING:
    from numpy import int32, uint64
    from numpy.typing import NDArray

Bits: TypeAlias = "NDArray[uint64]"
Shorts: TypeAlias = "NDArray[int32]"

TIME, WORK, LEAVE, COWS = 0, 1, 2, 3
JOB, FED, PARENT = 0, 1, 2
LABELS, WAITING, FULL, DONE = 0, 1, 2, 3
SAFE = 3
TINY = 1e-7
TWINS = 2**18
STRICT, LOOSE, EVERY = 0, 1, 2
"""Which settled label beats another: one whose jobs done are among the other's; any; one with just the same jobs."""


class Search(NamedTuple):
    """Labels made, the heap of those waiting, those settled by last job and meal, and the ways home found."""

    figures: Ints
    """(labels, 4): TIME, WORK, LEAVE, COWS."""
    cost: Floats
    seen: Bits
    """Jobs done, as bits."""
    who: Shorts
    """(labels, 3): JOB, FED, PARENT."""
    heap: Shorts
    settled: Ints
    """(2 x jobs + 2, width, 4): TIME or WORK, LEAVE, COWS, SAFE, in order of cost."""
    settled_cost: Floats
    settled_seen: Bits
    settled_count: Ints
    home: Shorts
    """Labels that go home from their last job, and what their days cost less prices."""
    home_cost: Floats
    counts: Ints
    """LABELS, WAITING, FULL (not 0 where room or time was short), DONE."""
    first_twin: Shorts
    """By a hash of the jobs done: a settled label, -1 where there is none; then the next of the same hash."""
    next_twin: Shorts
    way: int


def new_search(jobs: int, labels: int, width: int, homes: int, way: int) -> Search:
    """Room for so many labels, so many settled ones per job and meal, and so many ways home."""
    every = way == EVERY
    return Search(
        figures=np.empty((labels, 4), dtype=np.int64),
        cost=np.empty(labels),
        seen=np.empty(labels, dtype=np.uint64),
        who=np.empty((labels, 3), dtype=np.int32),
        heap=np.empty(labels, dtype=np.int32),
        settled=np.empty((2 * jobs + 2, width, 4), dtype=np.int64),
        settled_cost=np.empty((2 * jobs + 2, width)),
        settled_seen=np.empty((2 * jobs + 2, width), dtype=np.uint64),
        settled_count=np.zeros(2 * jobs + 2, dtype=np.int64),
        home=np.empty(homes, dtype=np.int32),
        home_cost=np.empty(homes),
        counts=np.zeros(4, dtype=np.int64),
        first_twin=np.full(TWINS if every else 1, -1, dtype=np.int32),
        next_twin=np.empty(labels if every else 1, dtype=np.int32),
        way=way,
    )


@compiled
def bit(job: int) -> "uint64":
    """The bit of a job."""
    return np.uint64(1) << np.uint64(job)


@compiled
def has(bits: "uint64", job: int) -> bool:
    """Whether the bit of a job is set."""
    return bool((bits >> np.uint64(job)) & np.uint64(1))


@compiled
def sooner(search: Search, a: int, b: int) -> bool:
    """Whether label a is settled before label b."""
    if search.figures[a, TIME] != search.figures[b, TIME]:
        return bool(search.figures[a, TIME] < search.figures[b, TIME])
    return bool(search.cost[a] < search.cost[b])


@compiled
def wait(search: Search, label: int) -> None:
    """Put a label into the heap."""
    heap, at = search.heap, search.counts[WAITING]
    search.counts[WAITING] += 1
    while at > 0:
        above = (at - 1) // 2
        if not sooner(search, label, heap[above]):
            break
        heap[at] = heap[above]
        at = above
    heap[at] = label


@compiled
def soonest(search: Search) -> int:
    """Take the first label out of the heap."""
    heap = search.heap
    first = heap[0]
    search.counts[WAITING] -= 1
    size = search.counts[WAITING]
    last, at = heap[size], 0
    while True:
        below = 2 * at + 1
        if below >= size:
            break
        if below + 1 < size and sooner(search, heap[below + 1], heap[below]):
            below += 1
        if not sooner(search, heap[below], last):
            break
        heap[at] = heap[below]
        at = below
    heap[at] = last
    return int(first)


@compiled
def make(
    search: Search,
    job: int,
    fed: int,
    parent: int,
    time: int,
    work: int,
    leave: int,
    cows: int,
    cost: float,
    seen: "uint64",
) -> None:
    """A new label, waiting to be settled."""
    label = search.counts[LABELS]
    if label >= search.cost.shape[0]:
        search.counts[FULL] = 1
        return
    search.counts[LABELS] += 1
    search.figures[label, TIME] = time
    search.figures[label, WORK] = work
    search.figures[label, LEAVE] = leave
    search.figures[label, COWS] = cows
    search.cost[label] = cost
    search.seen[label] = seen
    search.who[label, JOB] = job
    search.who[label, FED] = fed
    search.who[label, PARENT] = parent
    wait(search, label)


@compiled
def keep(search: Search, label: int, figure: int, cows: int, safe: int) -> None:
    """Settle a label among those of its job and meal, in order of cost. The other figures go with it."""
    bucket = 2 * search.who[label, JOB] + search.who[label, FED]
    at = search.settled_count[bucket]
    if at == search.settled_cost.shape[1]:
        search.counts[FULL] = 1
        return
    search.settled_count[bucket] += 1
    cost = search.cost[label]
    while at > 0 and search.settled_cost[bucket, at - 1] > cost:
        search.settled_cost[bucket, at] = search.settled_cost[bucket, at - 1]
        search.settled_seen[bucket, at] = search.settled_seen[bucket, at - 1]
        search.settled[bucket, at] = search.settled[bucket, at - 1]
        at -= 1
    search.settled_cost[bucket, at] = cost
    search.settled_seen[bucket, at] = search.seen[label]
    search.settled[bucket, at, 0] = figure
    search.settled[bucket, at, LEAVE - 1] = search.figures[label, LEAVE]
    search.settled[bucket, at, COWS - 1] = cows
    search.settled[bucket, at, SAFE] = safe
