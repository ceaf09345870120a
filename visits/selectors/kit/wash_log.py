"""The wash-downs noted on visits, held against the labels, and the visits that were left without one."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from django.core.paginator import Page, Paginator

from trimops.kernel.scope import Scope
from visits.domain.kit.stock_kinds import ConsumableKind
from visits.domain.kit.wash_doubts import WashWord, wash_doubts
from visits.domain.visit_states import VisitState
from visits.models import Consumable, Van, Visit, WashDown

PER_PAGE = 30


@dataclass(frozen=True)
class WashLine:
    """One wash-down, and where it falls short of the label, if the product is known."""

    wash: WashDown
    doubts: Sequence[str]


def wash_log(
    scope: Scope, van: Van | None = None, page: int | str | None = 1
) -> tuple[Page[WashDown], list[WashLine]]:
    """A page of them, newest first, of one van or of all. Three queries."""
    rows = WashDown.objects.within(scope).select_related("visit__farm", "visit__van", "by", "consumable")
    if van is not None:
        rows = rows.filter(visit__van=van)
    found = Paginator(rows.order_by("-washed_at", "-pk"), PER_PAGE).get_page(page)
    labels = _labels(scope)
    return found, [WashLine(row, _doubts(row, labels)) for row in found]


def left_unwashed(scope: Scope, since: datetime) -> list[Visit]:
    """Visits finished since then without a wash-down noted, and not said to be washed at the sign-off. One query."""
    noted = WashDown.objects.within(scope).values("visit_id")
    rows = Visit.objects.within(scope).filter(finished_at__gte=since, state=VisitState.FINISHED.value)
    # because: what was noted of an erased farm is gone, so nobody can say that nothing was
    rows = rows.filter(washed_down=False, farm__erased_at__isnull=True).exclude(pk__in=noted)
    return list(rows.select_related("farm", "van"))


def disinfectants(scope: Scope) -> list[Consumable]:
    """Those in use. One query."""
    rows = Consumable.objects.within(scope).filter(is_active=True, kind=ConsumableKind.DISINFECTANT)
    return list(rows)


def _labels(scope: Scope) -> Mapping[str, WashWord]:
    """By active substance, what the label of the business's product says."""
    return {
        item.active_substance.casefold(): WashWord(item.dilution, item.contact_minutes)
        for item in disinfectants(scope)
        if item.active_substance
    }


def _doubts(row: WashDown, labels: Mapping[str, WashWord]) -> Sequence[str]:
    label = labels.get(row.substance.casefold())
    if row.consumable is not None:
        label = WashWord(row.consumable.dilution, row.consumable.contact_minutes)
    return wash_doubts(WashWord(row.dilution, row.contact_minutes), label) if label else ()
