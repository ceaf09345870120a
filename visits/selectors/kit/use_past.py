"""What past visits used of each consumable, as what can be learned from."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from zoneinfo import ZoneInfo

from django.db.models import Min, Sum

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.kit.forecast.visit_use import Size, VisitUse
from visits.domain.kit.hundredths import exact_sum
from visits.domain.kit.stock_kinds import MovementKind
from visits.models import StockMovement
from visits.selectors.kit.cow_sizes import cow_sizes
from visits.selectors.kit.done_work import DoneVisit, done_work

NOTHING = Decimal(0)
NO_SIZES: tuple[Size, ...] = ()


@dataclass(frozen=True)
class UsePast:
    """By consumable, its visits since it is in the ledger; `visits` are all of them, used or not. Oldest first."""

    by_item: Mapping[int, list[VisitUse]]
    visits: list[VisitUse]


def use_past(scope: Scope, items: list[int], zone: ZoneInfo) -> UsePast:
    """Of the newest visits (`done_work`). Five queries."""
    done = done_work(scope, zone)
    since, by_cow, by_visit = _since(scope, items, zone), cow_sizes(scope, items), _by_visit(scope, items)
    found = {}
    for item in items:
        cows, first = by_cow.get(item, {}), since.get(item, date.max)
        found[item] = [
            _use(visit, cows.get(visit.pk, NO_SIZES), by_visit.get((item, visit.pk), NOTHING))
            for visit in done
            if visit.day >= first
        ]
    return UsePast(found, [_use(visit, NO_SIZES, NOTHING) for visit in done])


def _use(visit: DoneVisit, sizes: tuple[Size, ...], whole: Decimal) -> VisitUse:
    lame = min(visit.booked[1], visit.cows)
    return VisitUse(
        farm=visit.farm,
        day=visit.day,
        routine=visit.cows - lame,
        corrective=lame,
        used=sum((size * number for size, number in sizes), whole),
        reason=visit.reason,
        sizes=sizes,
        booked=visit.booked,
        notice=visit.notice,
        is_made=visit.is_made,
    )


def _since(scope: Scope, items: list[int], zone: ZoneInfo) -> dict[int, date]:
    """The day on which each consumable came into the ledger."""
    rows = StockMovement.objects.within(scope).filter(consumable_id__in=items).order_by()
    firsts = rows.values_list("consumable_id").annotate(Min("at"))
    return {item: local_day(at, zone) for item, at in firsts}


def _by_visit(scope: Scope, items: list[int]) -> dict[tuple[int, int], Decimal]:
    """What visits used as a whole: wash-downs, recipes per visit, corrections by hand."""
    lines = StockMovement.objects.within(scope).filter(
        kind=MovementKind.USED.value, trim__isnull=True, visit__isnull=False, consumable_id__in=items
    )
    sums = lines.order_by().values_list("consumable_id", "visit_id").annotate(Sum("quantity"))
    return {(item, visit): -exact_sum(total) for item, visit, total in sums}
