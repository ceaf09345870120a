"""The draft list of a visit as a page shows it."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from itertools import groupby

from trimops.kernel.clock import local_day
from visits.domain.draft_order import DraftLine, DraftOrder, Need
from visits.domain.visit_states import VisitState
from visits.models import DraftChange, DraftKind, Visit
from visits.selectors.before_visit import visit_day
from visits.selectors.draft_cows import gather_draft
from visits.selectors.draft_rules_in_use import RulesInUse
from visits.selectors.draft_time import DraftTime, draft_time

CHANGEABLE = (VisitState.WANTED, VisitState.PLANNED, VisitState.CONFIRMED)


@dataclass(frozen=True)
class DraftGroupView:
    """Cows of one need."""

    need: Need
    lines: Sequence[DraftLine]


@dataclass(frozen=True)
class DraftView:
    """`added` are the changes by which cows came onto the list, by the cow's key."""

    visit: Visit
    day: date
    order: DraftOrder
    groups: Sequence[DraftGroupView]
    struck: Sequence[DraftChange]
    added: dict[int, DraftChange]
    using: RulesInUse
    time: DraftTime

    @property
    def can_change(self) -> bool:
        return self.visit.visit_state in CHANGEABLE

    @property
    def free_places(self) -> int:
        """Cows that the visit counts with and the list does not have."""
        return max(0, self.visit.head_count - len(self.order.present))

    @property
    def more_than_expected(self) -> int:
        return max(0, len(self.order.present) - self.visit.head_count)

    @property
    def lame_left(self) -> int:
        """Lame cows that are left for next time: nobody may overlook that."""
        return sum(line.need is Need.LAME for line in self.order.left_for_next)

    @property
    def is_counted(self) -> bool:
        """Whether the visit counts with what the list has."""
        return self.visit.corrective_count == self.order.corrective and not self.more_than_expected


def draft_day(visit: Visit, now: datetime) -> date:
    """The visit's day; of one without an hour the first on which it still can be."""
    day = visit_day(visit)
    return day if visit.planned_start or visit.started_at else max(day, local_day(now, visit.business.zone))


def draft_view(visit: Visit, now: datetime) -> DraftView:
    """The farm and business of the visit must be at hand; a fixed number of queries."""
    day = draft_day(visit, now)
    gathered = gather_draft(visit, day)
    order = gathered.order(visit.head_count)
    return DraftView(
        visit=visit,
        day=day,
        order=order,
        groups=[
            DraftGroupView(need, list(lines))
            for need, lines in groupby(order.present, key=lambda line: line.need)
        ],
        struck=gathered.struck,
        added={row.cow_id: row for row in gathered.changes if row.kind == DraftKind.ADDED},
        using=gathered.using,
        time=draft_time(visit, order, now),
    )


def changed_list_time(visit: Visit, now: datetime) -> DraftTime | None:
    """What the list of a visit with an hour takes, if somebody changed it; None for any other. One query for those."""
    if visit.planned_start is None or visit.visit_state not in CHANGEABLE:
        return None
    if not DraftChange.objects.within(visit.scope).filter(visit=visit).exists():
        return None
    return draft_view(visit, now).time
