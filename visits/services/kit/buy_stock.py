"""What was bought lies in the store, or in the van it was bought into."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from django.db import transaction

from trimops.kernel.clock import local_day
from visits.domain.kit.stock_doubts import expiry_doubt, purchase_doubt
from visits.domain.kit.stock_kinds import MovementKind, Unit
from visits.models import Consumable, StockLot, StockMovement, StockPlace, SupplyLine
from visits.services.kit.lock_stock import lock_stock
from visits.services.kit.settle_counts import settle_counts
from visits.services.kit.stock_word import StockRefused, StockWord, booked_before, refuse_moment


@dataclass(frozen=True)
class BoughtItem:
    """One lot of a delivery: `quantity` in the consumable's unit, `cost` of the whole without tax (None: not known).

    Without a typed `expires_on` the date follows from the consumable's shelf days, if it has any. `line`: the order
    line that it came for; it is closed when all of it has come, or with `closes` (the rest will not).
    """

    consumable: Consumable
    quantity: Decimal
    cost: Decimal | None = None
    lot_code: str = ""
    expires_on: date | None = None
    line: SupplyLine | None = None
    closes: bool = False


@transaction.atomic
def buy_stock(
    *, place: StockPlace, bought: Sequence[BoughtItem], word: StockWord, supplier: str = ""
) -> list[StockMovement]:
    """A lot and a line of the ledger for each, with the supplier of the consumable where none is said.

    The same `uid` again gives what was booked then. StockRefused or ValidationError say what to mend.
    """
    lines = _locked_lines(place, bought)
    lock_stock(scope=place.scope)
    if before := booked_before(place.scope, word):
        return before
    refuse_moment(word)
    _refuse(bought, word, place)
    rows = [_book(place, item, word, supplier) for item in bought]
    for item in bought:
        if item.line is not None:
            _arrive(lines[item.line.pk], item, word)
    touched = {(item.consumable.pk, place.pk) for item in bought}
    settle_counts(scope=place.scope, touched=touched, since=word.at, noted_at=word.noted_at)
    return rows


def _locked_lines(place: StockPlace, bought: Sequence[BoughtItem]) -> dict[int, SupplyLine]:
    """Order lines are locked before consumables, by everybody."""
    wanted = [item.line.pk for item in bought if item.line is not None]
    if not wanted:
        return {}
    rows = SupplyLine.objects.within(place.scope).filter(pk__in=wanted).order_by("pk").locked()
    return {row.pk: row for row in rows}


def _refuse(bought: Sequence[BoughtItem], word: StockWord, place: StockPlace) -> None:
    if not bought:
        raise StockRefused("Nothing is filled in.")
    day = local_day(word.at, place.business.zone)
    doubts = []
    for each in bought:
        item = each.consumable
        doubts.append(purchase_doubt(item.name, each.quantity, Unit(item.unit), item.pack, each.cost))
        if each.expires_on:
            doubts.append(expiry_doubt(item.name, each.expires_on, day))
        if each.line is not None and each.line.consumable_id != item.pk:
            doubts.append(f"{item.name} is not what that order line was for.")
    if any(doubts):
        raise StockRefused(" ".join(doubt for doubt in doubts if doubt))


def _book(place: StockPlace, each: BoughtItem, word: StockWord, supplier: str) -> StockMovement:
    day, item = local_day(word.at, place.business.zone), each.consumable
    keeps = timedelta(days=item.shelf_days) if item.shelf_days else None
    lot = StockLot(business_id=place.business_id, consumable=item, code=each.lot_code.strip(), bought_on=day)
    lot.expires_on = each.expires_on or (day + keeps if keeps else None)
    lot.supplier = supplier.strip() or item.supplier
    lot.full_clean()
    lot.save()
    row = StockMovement(business_id=place.business_id, consumable=item, place=place, lot=lot, at=word.at)
    row.kind, row.quantity, row.cost = MovementKind.BOUGHT.value, each.quantity, each.cost
    row.note, row.by, row.noted_at, row.uid = word.note.strip(), word.by, word.noted_at, word.uid
    row.full_clean()
    row.save()
    return row


def _arrive(line: SupplyLine, item: BoughtItem, word: StockWord) -> None:
    line.arrived += item.quantity
    if line.closed_at is None and (item.closes or line.arrived >= line.quantity):
        line.closed_at = word.noted_at
    line.save(update_fields=["arrived", "closed_at"])
