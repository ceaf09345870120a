"""The ledger of one consumable, to be read."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from django.core.paginator import Page, Paginator
from django.db.models import Case, Expression, F, IntegerField, Sum, Value, When, Window

from trimops.kernel.scope import Scope
from visits.domain.kit.hundredths import exact_sum
from visits.domain.kit.stock_kinds import MovementKind
from visits.models import Consumable, StockMovement

PER_PAGE = 40
IS_COUNT = Case(When(kind=MovementKind.COUNTED, then=Value(1)), default=Value(0), output_field=IntegerField())
PARTS = ("place", "lot", "by", "count", "trim__cow", "trim__visit__farm", "visit__farm")


@dataclass(frozen=True)
class LedgerRow:
    """A line, and what its place then had. Below nought is shown as it is."""

    line: StockMovement
    balance: Decimal

    @property
    def is_short(self) -> bool:
        return self.balance < 0


@dataclass(frozen=True)
class ItemLedger:
    """One page of the ledger: its rows, and the page for the pager (its objects are keys)."""

    rows: Sequence[LedgerRow]
    page: "Page[tuple[int, Decimal]]"


def item_ledger(scope: Scope, consumable: Consumable, page: int | str | None = 1) -> ItemLedger:
    """One page of lines, the newest first, with place, lot, person, count, cow and visit at hand. Three queries.

    At one moment counts come last, as they speak of all that is dated up to theirs.
    """
    lines = StockMovement.objects.within(scope).filter(consumable=consumable)
    order: list[F | Expression] = [F("at"), IS_COUNT, F("pk")]
    running = Window(Sum("quantity"), partition_by=F("place_id"), order_by=order)
    told = lines.order_by("-at", IS_COUNT.desc(), "-pk").values_list("pk", running)
    found = Paginator(told, PER_PAGE).get_page(page)
    rows = lines.select_related(*PARTS).in_bulk([pk for pk, _ in found])
    return ItemLedger([LedgerRow(rows[pk], exact_sum(balance)) for pk, balance in found], found)
