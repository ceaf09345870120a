"""Proofs of optimum by a method of its own: every round there is, by labels, and the choice among them by MIP (HiGHS).

Shares no code with the planner. Fit for narrow windows only; times, distances and totals are tenths of a unit.
Labels and dominance: the textbook dynamic program for resource-constrained shortest paths; source for orienteering:
Righini and Salani 2009 (see `orienteering.py`).
"""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_matrix

from tests.published.several_days import DAYS, VANS, open_days
from tests.published.solomon import Instance

Label = tuple[int, int]
"""(free again, length so far)."""


def cheapest_sets(instance: Instance) -> dict[int, int]:
    """Length of the shortest round over each set of customers (a bit mask) that one vehicle can serve."""
    size = range(1, len(instance.customers))
    best: dict[int, int] = {}
    layer: dict[tuple[int, int], list[Label]] = {}
    for customer in size:
        _add(instance, layer, 0, 0, (10 * instance.customers[0].ready, 0), customer)
    while layer:
        grown: dict[tuple[int, int], list[Label]] = {}
        for (mask, last), labels in layer.items():
            home = min(
                (long + instance.tenths(last, 0) for _, long in _in_time(instance, last, labels)),
                default=None,
            )
            if home is not None:
                best[mask] = min(best.get(mask, home), home)
            for customer in size:
                if not mask >> customer & 1 and _load(instance, mask | 1 << customer) <= instance.capacity:
                    for label in labels:
                        _add(instance, grown, mask, last, label, customer)
        layer = grown
    return best


def _in_time(instance: Instance, last: int, labels: list[Label]) -> list[Label]:
    """The labels that still get home before the depot closes."""
    return [each for each in labels if each[0] + instance.tenths(last, 0) <= 10 * instance.customers[0].due]


def _load(instance: Instance, mask: int) -> int:
    return sum(each.demand for each in instance.customers if mask >> each.number & 1)


def _add(
    instance: Instance, layer: dict[tuple[int, int], list[Label]], mask: int, last: int, label: Label, to: int
) -> None:
    """The label driven on to one more customer, unless it comes too late or another is as good."""
    free = served(instance, last, label[0], to)
    if free is None:
        return
    new = free, label[1] + instance.tenths(last, to)
    held = layer.setdefault((mask | 1 << to, to), [])
    if not any(old[0] <= new[0] and old[1] <= new[1] for old in held):
        held[:] = [old for old in held if old[0] < new[0] or old[1] < new[1]] + [new]


def served(instance: Instance, last: int, free: int, to: int) -> int | None:
    """When customer `to` is served, coming from `last` free at `free`; None where that is too late."""
    there = instance.customers[to]
    start = max(free + instance.tenths(last, to), 10 * there.ready)
    return None if start > 10 * there.due else start + 10 * there.service


def proven_total(instance: Instance, shut: int = 0) -> float:
    """The least total with every customer served once, over five days with five vans (`several_days.py`).

    With `shut` 0 the days are mere names, and this is the least total of the instance itself.
    """
    sets = cheapest_sets(instance)
    days = range(DAYS) if shut else range(1)
    columns = [(mask, day) for mask in sets for day in days if _all_open(mask, day, shut)]
    vans = [VANS] * DAYS if shut else [instance.vehicles]
    return _chosen([sets[mask] for mask, _ in columns], columns, instance, vans, each=1) / 10


def proven_profit(instance: Instance, vehicles: int) -> int:
    """The largest demand so many vehicles can serve, no load limit."""
    free = replace(instance, capacity=10**9)
    columns = [(mask, 0) for mask in cheapest_sets(free)]
    return -_chosen([-_load(instance, mask) for mask, _ in columns], columns, instance, [vehicles], each=0)


def _chosen(
    prices: list[int], columns: list[tuple[int, int]], instance: Instance, vans: list[int], each: int
) -> int:
    """Least price of rounds (mask, day), each customer in `each` to 1 of them, so many a day as there are vans."""
    once = [[at for at, (mask, _) in enumerate(columns) if mask >> n & 1] for n in _numbers(instance)]
    by_day = [[at for at, (_, on) in enumerate(columns) if on == day] for day in range(len(vans))]
    found = milp(
        prices,
        integrality=np.ones(len(columns)),
        bounds=Bounds(0, 1),
        constraints=[
            LinearConstraint(_rows(once, len(columns)), each, 1),
            LinearConstraint(_rows(by_day, len(columns)), 0, vans),
        ],
        options={"mip_rel_gap": 0},
    )
    if not found.success:
        raise ValueError(f"{instance.name}: {found.message}")
    return round(found.fun)


def _numbers(instance: Instance) -> range:
    return range(1, len(instance.customers))


def _all_open(mask: int, day: int, shut: int) -> bool:
    return all(day in open_days(number, shut) for number in range(mask.bit_length()) if mask >> number & 1)


def _rows(members: list[list[int]], width: int) -> csr_matrix:
    pairs = [(row, column) for row, columns in enumerate(members) for column in columns]
    ones = np.ones(len(pairs))
    return csr_matrix((ones, tuple(zip(*pairs, strict=True))), shape=(len(members), width))


def most_profit(instance: Instance) -> int:
    """The largest demand one vehicle can serve, no load limit: labels (profit, free, out of reach) per last stop."""
    best = 0
    layer: dict[int, list[tuple[int, int, int]]] = {0: [(0, 10 * instance.customers[0].ready, 1)]}
    while layer:
        best = max([best, *(label[0] for labels in layer.values() for label in labels)])
        grown: dict[int, list[tuple[int, int, int]]] = {}
        for last, labels in layer.items():
            for label in labels:
                for to, new in _profit_labels(instance, last, label):
                    _keep(grown.setdefault(to, []), new)
        layer = {to: labels for to, labels in grown.items() if labels}
    return best


def _profit_labels(
    instance: Instance, last: int, label: tuple[int, int, int]
) -> Iterator[tuple[int, tuple[int, int, int]]]:
    profit, free, gone = label
    for to in _numbers(instance):
        if gone >> to & 1:
            continue
        then = served(instance, last, free, to)
        if then is None or then + instance.tenths(to, 0) > 10 * instance.customers[0].due:
            continue
        lost = gone | 1 << to
        for other in _numbers(instance):
            if not lost >> other & 1 and served(instance, to, then, other) is None:
                lost |= 1 << other
        yield to, (profit + instance.customers[to].demand, then, lost)


def _keep(held: list[tuple[int, int, int]], new: tuple[int, int, int]) -> None:
    """Dominance: as much profit, free as early, and nothing out of reach that the other still has."""
    profit, free, gone = new
    if any(p >= profit and f <= free and g & ~gone == 0 for p, f, g in held):
        return
    held[:] = [(p, f, g) for p, f, g in held if not (profit >= p and free <= f and gone & ~g == 0)] + [new]
