"""Every day of a small week by trying each order, with what it costs after prices: to hold the labels against."""

import numpy as np

from tests.visits.domain.planning.exact.whole_pools import whole_pool
from visits.domain.planning.exact import completions, day_labels, label_store
from visits.domain.planning.exact.shift_arrays import shift_arrays

ALL = np.uint64(2**64 - 1)


def reduced(board, prices):
    """By shift and set of jobs: the cheapest day's cost less prices."""
    return {
        (shift, jobs): cost - sum(prices[job] for job in jobs)
        for (shift, jobs), (cost, _) in whole_pool(board).items()
        if jobs
    }


def completed(board, shift, prices):
    """The shift's arrays and completions, all jobs remembered."""
    jobs = len(board.problem.jobs)
    day, back = shift_arrays(board, shift), label_store.new_search(jobs, 50_000, 5_000, 1, label_store.STRICT)
    completions.complete(day, back, np.array(prices, dtype=np.float64), np.full(jobs, ALL))
    return day, back


def searched(board, shift, prices, limit, way):
    """(least cost less prices found, the search itself)."""
    day, back = completed(board, shift, prices)
    search = label_store.new_search(len(board.problem.jobs), 50_000, 5_000, 5_000, way)
    return day_labels.run(day, search, back, np.array(prices, dtype=np.float64), float(limit)), search


def found_sets(search):
    """By set of jobs: the least cost less prices among the ways home found."""
    sets = {}
    for at in range(search.counts[label_store.DONE]):
        label, jobs = search.home[at], []
        while label >= 0:
            jobs.append(int(search.who[label, label_store.JOB]))
            label = search.who[label, label_store.PARENT]
        key = frozenset(jobs[:-1])
        sets[key] = min(sets.get(key, np.inf), search.home_cost[at])
    return sets
