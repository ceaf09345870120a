"""What was ordered from one supplier is noted, so that the list falls silent."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from uuid import UUID

from django.db import transaction

from trimops.accounts.models import Business, User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.domain.kit.supply_days import arrival_day
from visits.models import Consumable, SupplyLine, SupplyOrder

MOST_PACKS = 1000


class OrderRefused(RuleBroken):
    """The order cannot be noted as it is; the message says what to mend."""

    code = "order_refused"


class OrderedMeanwhile(OrderRefused):
    """Somebody else ordered one of the things since the list was looked at."""

    code = "ordered_meanwhile"


@dataclass(frozen=True)
class WantedLine:
    """So many whole packs of a consumable."""

    consumable: int
    packs: int


@dataclass(frozen=True)
class OrderWord:
    """What was ordered. `seen`: keys of the open order lines that stood on the list when it was decided. `uid` is the
    form's; `mailed_to` is where the business sent it, if by mail.
    """

    supplier: str
    lines: Sequence[WantedLine]
    uid: UUID
    seen: frozenset[int] = frozenset()
    mailed_to: str = ""
    note: str = ""


@transaction.atomic
def place_order(*, business: Business, word: OrderWord, at: datetime, by: User) -> SupplyOrder:
    """Note the order; each line is expected after its own lead days. The same `uid` again gives the order noted then.

    OrderRefused for nothing or nonsense, OrderedMeanwhile where a line is on order that the person has not seen.
    """
    scope = Scope(business.pk)
    items = _locked_items(scope, word.lines)
    known = SupplyOrder.objects.within(scope).filter(uid=word.uid).first()
    if known is not None:
        return known
    _refuse_unseen(scope, word, items)
    order = SupplyOrder(business=business, supplier=word.supplier, ordered_at=at, by=by, uid=word.uid)
    order.mailed_to, order.note = word.mailed_to, word.note
    order.full_clean()
    order.save()
    today = local_day(at, business.zone)
    for line in word.lines:
        item = items[line.consumable]
        row = SupplyLine(business=business, order=order, consumable=item, quantity=item.pack * line.packs)
        row.expected_on = arrival_day(today, item.lead_days)
        row.full_clean()
        row.save()
    return order


def _locked_items(scope: Scope, lines: Sequence[WantedLine]) -> dict[int, Consumable]:
    """The consumables of the lines, locked in one order, so that two orders wait for each other."""
    wanted = [line.consumable for line in lines]
    if not lines:
        raise OrderRefused("Nothing is chosen: say how many packs of at least one thing.")
    if len(set(wanted)) != len(wanted):
        raise OrderRefused("The same thing stands on the order twice: put it into one line.")
    for line in lines:
        if not 1 <= line.packs <= MOST_PACKS:
            raise OrderRefused(
                f"{line.packs} packs cannot be meant: 1 to {MOST_PACKS} can be ordered at once."
            )
    rows = Consumable.objects.within(scope).filter(pk__in=wanted).order_by("pk").locked()
    items = {item.pk: item for item in rows}
    if len(items) != len(wanted):
        raise OrderRefused("One of the things is not in your kit any more: look at the list again.")
    return items


def _refuse_unseen(scope: Scope, word: OrderWord, items: dict[int, Consumable]) -> None:
    rows = SupplyLine.objects.within(scope).filter(consumable__in=items, closed_at__isnull=True)
    new = rows.exclude(pk__in=word.seen).select_related("order__by").order_by("pk").first()
    if new is not None:
        item, order = items[new.consumable_id], new.order
        quantity = f"{Decimal(new.quantity).normalize():f}"
        raise OrderedMeanwhile(
            f"{order.by} has ordered {quantity} of {item.name} meanwhile: look at the list again before you order more."
        )
