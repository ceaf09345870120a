"""The vans are loaded for the day, so that the crush page can tell what is left in each."""

from datetime import datetime
from decimal import Decimal

from django.db.models import Sum

from trimops.kernel.scope import Scope
from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.demo_people import kit
from visits.models import Consumable, ConsumableKind, MovementKind, StockMovement, Van

CARRIED = {
    ConsumableKind.BLOCK: Decimal(20),
    ConsumableKind.GLUE: Decimal(1200),
    ConsumableKind.WRAP: Decimal(24),
    ConsumableKind.DRESSING: Decimal(30),
    ConsumableKind.GLOVES: Decimal(50),
    ConsumableKind.DISC: Decimal(3),
    ConsumableKind.DISINFECTANT: Decimal(2000),
}


def load_vans(crew: Crew, at: datetime) -> None:
    """What a van used up comes out of the yard's stock; what it carries today was bought for it."""
    scope, cost = Scope(crew.business.pk), {sketch.name: sketch.cost for sketch in kit().consumables}
    rows: list[StockMovement] = []
    for van in crew.vans:
        left = _left(scope, van)
        for item in Consumable.objects.within(scope):
            used_up = left.get(item.pk, Decimal(0))
            rows += [_counted(item, van, -used_up, at), _counted(item, None, used_up, at)]
            rows.append(_bought(item, van, cost[item.name], at))
    StockMovement.objects.bulk_create([row for row in rows if row.quantity])


def _left(scope: Scope, van: Van) -> dict[int, Decimal]:
    rows = StockMovement.objects.within(scope).filter(van=van).values_list("consumable_id")
    return dict(rows.annotate(left=Sum("quantity")).order_by())


def _counted(item: Consumable, van: Van | None, quantity: Decimal, at: datetime) -> StockMovement:
    return StockMovement(
        business_id=item.business_id,
        consumable=item,
        van=van,
        kind=MovementKind.COUNTED,
        quantity=quantity,
        at=at,
    )


def _bought(item: Consumable, van: Van, cost: Decimal, at: datetime) -> StockMovement:
    quantity = CARRIED[ConsumableKind(item.kind)]
    return StockMovement(
        business_id=item.business_id,
        consumable=item,
        van=van,
        kind=MovementKind.BOUGHT,
        quantity=quantity,
        cost=quantity * cost,
        at=at,
    )
