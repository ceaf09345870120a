"""What visits used, and what that cost."""

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from django.db.models import Sum

from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.kit.hundredths import exact_sum, in_hundredths
from visits.domain.kit.stock_events import stock_events
from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.kit.stock_ledger import cost_events, packs_bought
from visits.domain.kit.stock_lines import Cost, Movement
from visits.models import Consumable, StockMovement, Visit
from visits.selectors.kit.ledger_lines import movements_of, source_of


@dataclass(frozen=True)
class MaterialLine:
    """Of one consumable, all that a visit used less what was taken back."""

    consumable: Consumable
    quantity: Decimal
    cost: Decimal
    is_known: bool


@dataclass(frozen=True)
class VisitMaterials:
    """`cost` without tax. Not `is_known`: some of it was bought without a price, or not bought yet by the ledger."""

    lines: Sequence[MaterialLine] = ()

    @property
    def cost(self) -> Decimal:
        return sum((line.cost for line in self.lines), Decimal(0))

    @property
    def unknown(self) -> list[str]:
        """The names of what has no price, or not for all of it."""
        return [line.consumable.name for line in self.lines if not line.is_known]

    @property
    def is_known(self) -> bool:
        return not self.unknown


def visit_materials(scope: Scope, visits: Collection[Visit]) -> dict[int, VisitMaterials]:
    """By visit (its key). Six queries, however long the ledger is.

    Costs are those of `reckon_stock` without going through all lines: what had left before the first of these visits is
    a sum, and only what was bought is read of the time before.
    """
    asked = _asked(scope, visits)
    if not asked.moments:
        return {visit.pk: VisitMaterials() for visit in visits}
    first, last = min(asked.moments), max(asked.moments)
    of_items = StockMovement.objects.within(scope).filter(consumable_id__in=asked.items)
    bought = movements_of(of_items.filter(kind=MovementKind.BOUGHT))
    rest = of_items.exclude(kind=MovementKind.BOUGHT)
    lines = movements_of(rest.filter(at__gte=first, at__lte=last))
    gone = _gone(rest.filter(at__lt=first))
    costs: defaultdict[int, dict[int, Cost]] = defaultdict(dict)
    for item in asked.items:
        for source, cost in _costs(bought[item], lines[item], gone.get(item, 0)):
            if visit := asked.visit_of.get(source):
                costs[visit][item] = costs[visit].get(item, Cost()) + cost
    items = list(Consumable.objects.within(scope).filter(pk__in=asked.items))
    return {visit.pk: _materials(items, costs[visit.pk]) for visit in visits}


@dataclass(frozen=True)
class _Asked:
    """What the visits used something of, when, and which visit each source of a use belongs to."""

    items: set[int]
    moments: set[datetime]
    visit_of: Mapping[str, int]


def _asked(scope: Scope, visits: Collection[Visit]) -> _Asked:
    keys = [visit.pk for visit in visits]
    rows = StockMovement.objects.within(scope).filter(kind=MovementKind.USED).order_by()
    of_cows = rows.filter(trim__visit_id__in=keys).values_list(
        "consumable_id", "at", "use_of", "trim_id", "trim__visit_id"
    )
    of_visits = rows.filter(visit_id__in=keys).values_list(
        "consumable_id", "at", "use_of", "trim_id", "visit_id"
    )
    found = [*of_cows, *of_visits]
    visit_of = {source_of(use, trim, visit): visit for _, _, use, trim, visit in found if visit is not None}
    return _Asked({row[0] for row in found}, {row[1] for row in found}, visit_of)


def _gone(rows: TenantQuerySet[StockMovement]) -> dict[int, int]:
    """By consumable, how much had left the business, in hundredths; what was moved comes to nothing."""
    sums = rows.order_by().values_list("consumable_id").annotate(Sum("quantity"))
    return {item: -in_hundredths(exact_sum(total)) for item, total in sums}


def _costs(bought: Sequence[Movement], lines: Sequence[Movement], gone: int) -> list[tuple[str, Cost]]:
    packs = packs_bought(stock_events(bought))
    costed = cost_events(stock_events(lines), packs, gone)
    return [(each.event.source, each.cost) for each in costed if each.event.kind is MovementKind.USED]


def _materials(items: Sequence[Consumable], costs: Mapping[int, Cost]) -> VisitMaterials:
    found = [(item, costs[item.pk]) for item in items if item.pk in costs]
    return VisitMaterials(
        tuple(MaterialLine(item, cost.quantity, cost.cost, cost.is_known) for item, cost in found)
    )
