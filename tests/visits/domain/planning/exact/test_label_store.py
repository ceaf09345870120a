import numpy as np

from visits.domain.planning.exact.label_store import (
    FULL,
    LABELS,
    STRICT,
    bit,
    has,
    keep,
    make,
    new_search,
    soonest,
)


def made(labels, room=50, width=10):
    """A search holding labels of (time, cost)."""
    search = new_search(3, room, width, 1, STRICT)
    for time, cost in labels:
        make(search, 1, 1, -1, time, 0, 0, 0, cost, bit(1))
    return search


def test_bits_of_jobs_up_to_the_last():
    both = bit(0) | bit(63)
    assert [has(np.uint64(both), job) for job in (0, 1, 62, 63)] == [True, False, False, True]


def test_labels_are_taken_by_time_then_by_cost():
    labels = [(5, 2.0), (3, 9.0), (5, 1.0), (4, 0.0), (3, 8.0), (9, 0.0), (1, 1.0)]
    search = made(labels)
    taken = [labels[soonest(search)] for _ in labels]
    assert taken == sorted(labels)


def test_many_labels_come_out_in_order():
    labels = [(int(time), float(cost)) for time, cost in np.random.default_rng(1).integers(0, 40, (300, 2))]
    search = made(labels, room=300)
    assert [labels[soonest(search)] for _ in labels] == sorted(labels)


def test_no_room_for_a_label_is_told():
    search = made([(1, 1.0)] * 3, room=2)
    assert (search.counts[LABELS], search.counts[FULL]) == (2, 1)


def test_settled_labels_lie_in_order_of_cost_with_their_figures():
    search = made([(1, 5.0), (2, 3.0), (3, 4.0)])
    for label in range(3):
        keep(search, label, 10 + label, 0, 0)
    bucket = 2 * 1 + 1
    assert list(search.settled_cost[bucket, :3]) == [3.0, 4.0, 5.0]
    assert list(search.settled[bucket, :3, 0]) == [11, 12, 10]


def test_no_room_among_the_settled_is_told():
    search = made([(1, 5.0), (2, 3.0)], width=1)
    keep(search, 0, 0, 0, 0)
    keep(search, 1, 0, 0, 0)
    assert search.counts[FULL] == 1
