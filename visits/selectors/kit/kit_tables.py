"""The stock as tables to take out."""

from collections.abc import Iterator
from zoneinfo import ZoneInfo

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.documents.data_table import DataTable
from visits.documents.kit.kit_csv import (
    KitLine,
    LedgerLine,
    LotLine,
    consumables_table,
    ledger_table,
    lots_table,
    stock_table,
)
from visits.domain.kit.stock_kinds import MovementKind, Unit
from visits.models import Consumable, StockMovement, StockPlace
from visits.selectors.kit.kit_sheets import kit_sheets
from visits.selectors.kit.lots_left import all_lots_left
from visits.selectors.kit.stock_now import stock_now


def consumables(business: Business) -> DataTable:
    """Every consumable with its recipe and what lies where; it can be read in again. Six queries."""
    return consumables_table(*_lines(business))


def stock(business: Business) -> DataTable:
    """What lies where. Six queries."""
    return stock_table(*_lines(business))


def _lines(business: Business) -> tuple[list[KitLine], list[str]]:
    scope = Scope(business.pk)
    told = stock_now(scope)
    lies = {
        item.consumable.pk: {each.place.name: each.balance for each in item.places if each.balance}
        for item in told
    }
    places = [each.place.name for each in told[0].places] if told else []
    return [KitLine(item.sheet, lies.get(item.key, {})) for item in kit_sheets(scope)], places


def ledger(business: Business) -> DataTable:
    """All lines of the ledger in the order of time. One query."""
    rows = StockMovement.objects.within(Scope(business.pk)).select_related(
        "consumable", "place", "lot", "by", "trim__cow", "trim__visit__farm", "visit__farm"
    )
    return ledger_table([_told(row, business.zone) for row in rows])


def _told(row: StockMovement, zone: ZoneInfo) -> LedgerLine:
    return LedgerLine(
        consumable=row.consumable.name,
        unit=Unit(row.consumable.unit),
        at=row.at.astimezone(zone),
        place=row.place.name,
        what=MovementKind(row.kind).label,
        quantity=row.quantity,
        lot=str(row.lot) if row.lot else "",
        cost=row.cost,
        why=", ".join(_why(row)),
        who=row.by.name if row.by else "",
        note=row.note,
    )


def _why(row: StockMovement) -> Iterator[str]:
    """Where a use was learned from, or why it was thrown away."""
    if row.use_of:
        yield row.get_use_of_display()
    if row.because:
        yield row.get_because_display()
    if row.trim:
        yield f"cow {row.trim.cow.number} at {row.trim.visit.farm.name}"
    elif row.visit:
        yield row.visit.farm.name


def lots(business: Business) -> DataTable:
    """What is left of every lot, place by place, the oldest date first. At most seven queries."""
    scope = Scope(business.pk)
    places = dict(StockPlace.objects.within(scope).values_list("pk", "name"))
    left = all_lots_left(scope)
    items = Consumable.objects.within(scope)
    return lots_table(
        LotLine(
            consumable=item.name,
            unit=Unit(item.unit),
            place=places[each.place],
            code=each.lot.code,
            expires_on=each.lot.expires_on,
            bought_on=each.lot.bought_on,
            left=each.quantity,
            supplier=each.lot.supplier,
        )
        for item in items
        for each in left.get(item.pk, ())
        if each.lot
    )


STOCK_TABLES = {"consumables": consumables, "stock": stock, "ledger": ledger, "lots": lots}
"""By the name of the file."""
