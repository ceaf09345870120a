"""How many cows fit into the time of a visit."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from farms.selectors.farm_windows import milkings_by_farm, windows_of
from visits.domain.draft_order import DraftOrder
from visits.domain.visit_lengths.finished_visit import Asked
from visits.domain.visit_lengths.learned_rule import LearnedRule
from visits.models import DraftChange, Visit
from visits.selectors.business_figures import figures_of
from visits.selectors.draft_room import DraftRoom, draft_room
from visits.selectors.expected_length import asked_of, expected_by
from visits.selectors.farm_setup import setup_of
from visits.selectors.learned_rule import rule_in_use
from visits.selectors.week_shifts import hours_of

MOST_COWS = 500
SLACK, SLACK_SHARE = 5, 0.1
"""Minutes, and a share of those planned: what a visit is said to take moves a little with every night's learning."""
LONGEST_LOOK = 14
"""Days of a wanted visit that are looked at for the longest time between two milkings."""


@dataclass(frozen=True)
class DraftTime:
    """`minutes` is what the list takes; `planned_for` the cows that fit into the minutes of the diary or the plan.

    `room` is the most cows that time allows without moving anybody (with an hour), or between two milkings (without);
    None where nobody can tell.
    """

    cows: int
    minutes: int
    planned_minutes: int
    planned_for: int
    room: int | None
    has_hour: bool

    @property
    def over(self) -> int:
        """Cows of the list more than the time allows."""
        if self.room is None or (self.has_hour and not self.is_longer):
            return 0
        return max(0, self.cows - self.room)

    @property
    def is_longer(self) -> bool:
        """Longer than planned by more than what a new night's learning may change."""
        return self.minutes > self.planned_minutes * (1 + SLACK_SHARE) + SLACK

    @property
    def is_unknown(self) -> bool:
        """Longer than planned, and nobody can tell whether there is time for it."""
        return self.room is None and self.is_longer


def draft_time(visit: Visit, order: DraftOrder, now: datetime) -> DraftTime:
    """Of the list as it stands. The farm and business of the visit must be at hand; a fixed number of queries."""
    rule, cows, lame = rule_in_use(visit.scope).rule, len(order.present), order.corrective
    room = draft_room(visit, now)
    longest = _longest_window(visit, now) if visit.planned_start is None else None

    def takes(count: int) -> int:
        return minutes_for(visit, rule, count, lame)

    return DraftTime(
        cows=cows,
        minutes=takes(cows),
        planned_minutes=visit.expected_minutes,
        planned_for=_most(lambda count: takes(count) <= visit.expected_minutes),
        room=_room(room, longest, takes),
        has_hour=visit.planned_start is not None,
    )


def minutes_for(visit: Visit, rule: LearnedRule, cows: int, lame: int) -> int:
    """What so many cows take there, so many of them lame or re-checked."""
    asked = Asked(visit.farm_id, visit.van_id, setup_of(visit.farm), cows, min(lame, cows))
    return expected_by(rule, asked).minutes


def list_minutes(visit: Visit) -> int:
    """How long the visit is to be planned for: longer than it was, if its list was changed and takes longer now."""
    changed = DraftChange.objects.within(visit.scope).filter(visit=visit).exists()
    if not changed:
        return visit.expected_minutes
    return max(visit.expected_minutes, expected_by(rule_in_use(visit.scope).rule, asked_of(visit)).minutes)


def _room(room: DraftRoom | None, longest: int | None, takes: Callable[[int], int]) -> int | None:
    if room is not None:
        return _most(lambda count: room.fits(takes(count), count))
    return None if longest is None else _most(lambda count: takes(count) <= longest)


def _most(fits: Callable[[int], bool]) -> int:
    """The largest count that fits, if every smaller one does; 0 where not even one does."""
    low, high = 0, MOST_COWS
    while low < high:
        middle = (low + high + 1) // 2
        low, high = (middle, high) if fits(middle) else (low, middle - 1)
    return low


def _longest_window(visit: Visit, now: datetime) -> int | None:
    """Minutes of the longest time in which cows can be had on the days on which the visit is due."""
    zone, farm = visit.business.zone, visit.farm
    hours, milkings = hours_of(figures_of(visit.scope).planning), milkings_by_farm(visit.scope)
    found = [
        (end - start) // timedelta(minutes=1)
        for day in _due_days(visit, now.astimezone(zone).date())
        for start, end in windows_of(farm, day, zone, milkings.get((farm.pk, day.weekday()), []), hours)
    ]
    return max(found, default=None)


def _due_days(visit: Visit, today: date) -> list[date]:
    first = max(visit.due_from, today)
    last = min(max(visit.due_until, first), first + timedelta(days=LONGEST_LOOK))
    return [first + timedelta(days=n) for n in range((last - first).days + 1)]
