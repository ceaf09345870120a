"""What a finished visit can be charged for, counted from the cows put down."""

from collections import Counter
from decimal import Decimal

from invoicing.domain.pricing import PriceItem, WorkDone
from trimops.kernel.scope import Scope
from visits.domain.actions import ActionKind, BlockKind, TrimKind
from visits.domain.visit_states import VisitReason
from visits.models import ClawAction, Trim, Visit

KINDS = {
    TrimKind.FUNCTIONAL.value: PriceItem.FUNCTIONAL,
    TrimKind.CORRECTIVE.value: PriceItem.CORRECTIVE,
    TrimKind.CHECK.value: PriceItem.CHECK,
}


def work_done(visit: Visit) -> WorkDone:
    """Counts by price item, with the reason for each in words."""
    scope = Scope(visit.business_id)
    counts: Counter[PriceItem] = Counter()
    for kind in Trim.objects.within(scope).filter(visit=visit).values_list("kind", flat=True):
        counts[KINDS[kind]] += 1
    for item in _material(scope, visit):
        counts[item] += 1
    if counts:
        counts[PriceItem.CALL_OUT] = 1
        counts[PriceItem.URGENT] = int(visit.reason == VisitReason.URGENT)
    why = {item: _why(item, count) for item, count in counts.items()}
    return WorkDone({item: Decimal(count) for item, count in counts.items()}, why)


def _material(scope: Scope, visit: Visit) -> list[PriceItem]:
    rows = ClawAction.objects.within(scope).filter(trimmed_foot__trim__visit=visit)
    return [item for kind, block in rows.values_list("kind", "block_kind") if (item := _item(kind, block))]


def _item(kind: str, block: str) -> PriceItem | None:
    if kind == ActionKind.BLOCK:
        return PriceItem.SHOE if block == BlockKind.SHOE else PriceItem.BLOCK
    return {ActionKind.WRAP.value: PriceItem.WRAP, ActionKind.DRESSING.value: PriceItem.DRESSING}.get(kind)


def _why(item: PriceItem, count: int) -> str:
    if item is PriceItem.CALL_OUT:
        return "one visit"
    if item is PriceItem.URGENT:
        return "asked for as urgent"
    return f"{count} noted at the crush"
