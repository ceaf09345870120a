"""How much single cows used, visit by visit."""

from collections import Counter, defaultdict
from collections.abc import Iterator
from decimal import Decimal

from django.db.models import Count, Exists, OuterRef, Q

from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.kit.forecast.visit_use import Size
from visits.domain.kit.stock_kinds import MovementKind
from visits.models import StockMovement

ByVisit = dict[int, tuple[Size, ...]]
_Row = tuple[int, int, Decimal]
"""Consumable, visit, what the ledger line says (below nought where it was used)."""


def cow_sizes(scope: Scope, items: list[int]) -> dict[int, ByVisit]:
    """By consumable and visit: (what a cow used, how many cows used just so much). Two queries.

    The database counts lines that are alike. A cow whose use was corrected has several; hers are netted here.
    """
    lines = StockMovement.objects.within(scope).filter(
        kind=MovementKind.USED.value, trim__isnull=False, consumable_id__in=items
    )
    found: defaultdict[tuple[int, int], Counter[Decimal]] = defaultdict(Counter)
    alike = lines.order_by().values_list("consumable_id", "trim__visit_id", "quantity")
    for item, visit, quantity, number in alike.annotate(Count("pk")):
        found[item, visit][-quantity] += number
    for lines_of_cow in _corrected(scope, lines):
        item, visit, _ = lines_of_cow[0]
        sizes = found[item, visit]
        for _, _, quantity in lines_of_cow:
            sizes[-quantity] -= 1
        sizes[-sum((quantity for _, _, quantity in lines_of_cow), Decimal(0))] += 1
    by_item: defaultdict[int, ByVisit] = defaultdict(dict)
    for (item, visit), sizes in found.items():
        by_item[item][visit] = tuple((size, number) for size, number in sizes.items() if size and number)
    return by_item


def _corrected(scope: Scope, lines: TenantQuerySet[StockMovement]) -> Iterator[list[_Row]]:
    """The lines of each cow that has more than one of a consumable."""
    another = StockMovement.objects.within(scope).filter(
        ~Q(pk=OuterRef("pk")), trim_id=OuterRef("trim_id"), consumable_id=OuterRef("consumable_id")
    )
    found: defaultdict[tuple[int, int], list[_Row]] = defaultdict(list)
    rows = lines.filter(Exists(another)).order_by("pk")
    columns = ("trim_id", "consumable_id", "trim__visit_id", "quantity")
    for trim, item, visit, quantity in rows.values_list(*columns):
        found[trim, item].append((item, visit, quantity))
    yield from found.values()
