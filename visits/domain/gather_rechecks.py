"""Re-checks of one farm gathered into as few visits as can be, each on a day that suits all its cows."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby


@dataclass(frozen=True)
class OpenRecheck:
    """A foot still to be looked at: its key, its farm, first and last day."""

    id: int
    farm_id: int
    due_from: date
    due_until: date


@dataclass(frozen=True)
class GatheredRechecks:
    """Re-checks of one farm that one visit can see to, on any day from `due_from` to `due_until`."""

    farm_id: int
    ids: tuple[int, ...]
    due_from: date
    due_until: date


def gather_rechecks(rechecks: Sequence[OpenRecheck], today: date) -> list[GatheredRechecks]:
    """The fewest groups such that each has days that fit all its cows.

    What is overdue counts as due today. Taking ranges by their last day and opening a new group only when the
    next range starts after the group's first last day is the least number of groups (piercing of intervals;
    greedy is optimal, Cormen et al., activity selection, from memory).
    """
    by_farm = sorted(rechecks, key=lambda item: (item.farm_id, max(item.due_until, today), item.id))
    return [
        group
        for _, of_farm in groupby(by_farm, key=lambda item: item.farm_id)
        for group in _gather_farm(list(of_farm), today)
    ]


def _gather_farm(rechecks: list[OpenRecheck], today: date) -> list[GatheredRechecks]:
    groups: list[list[OpenRecheck]] = []
    last_day = date.min
    for item in rechecks:
        if not groups or max(item.due_from, today) > last_day:
            groups.append([])
            last_day = max(item.due_until, today)
        groups[-1].append(item)
    return [_group(items, today) for items in groups]


def _group(items: list[OpenRecheck], today: date) -> GatheredRechecks:
    return GatheredRechecks(
        farm_id=items[0].farm_id,
        ids=tuple(item.id for item in items),
        due_from=max(max(item.due_from, today) for item in items),
        due_until=min(max(item.due_until, today) for item in items),
    )
