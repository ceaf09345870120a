"""A list of consumables is read in: all of it, or nothing."""

from collections.abc import Sequence
from datetime import datetime
from uuid import UUID, uuid5

from django.core.exceptions import ValidationError
from django.db import transaction

from trimops.accounts.models import Business, User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.domain.kit.kit_sheet import KitSheet
from visits.domain.kit.plan_kit_list import KitPlan, PlannedItem, plan_kit_list
from visits.domain.kit.read_kit_list import UnreadableKitList, read_kit_list
from visits.domain.kit.typed_recipe import TypedLine
from visits.models import Consumable, StockPlace
from visits.selectors.kit.kit_sheets import kit_sheets
from visits.services.kit.buy_stock import BoughtItem, buy_stock
from visits.services.kit.lock_stock import lock_stock
from visits.services.kit.move_stock import Way, move_stock
from visits.services.kit.save_consumable import save_consumable
from visits.services.kit.stock_place import store_of
from visits.services.kit.stock_places import stock_places_of
from visits.services.kit.stock_word import Amount, StockWord

FIRST_STOCK = "Was there when the list was read in"


class KitListRefused(RuleBroken):
    """Nothing of the list is read in; the message says what to mend."""

    code = "kit_list_refused"


@transaction.atomic
def read_in_kit(
    *, business: Business, table: Sequence[Sequence[str]], at: datetime, by: User, uid: UUID
) -> KitPlan:
    """New consumables with their first stock, and changes of known ones; what was done.

    The stock is bought into the store as one lot and moved from there, so that its cost stays one. Read in a second
    time it finds nothing to do. KitListRefused where a line has a fault; then nothing is done.
    """
    scope = Scope(business.pk)
    _wait_for_others(scope)
    places = {place.name: place for place in stock_places_of(scope)}
    try:
        plan = plan_kit_list(read_kit_list(table, list(places)), kit_sheets(scope))
    except UnreadableKitList as fault:
        raise KitListRefused(str(fault)) from fault
    if plan.refused:
        row = plan.refused[0]
        where = f"Line {row.line}, {row.name}" if row.name else f"Line {row.line}"
        raise KitListRefused(f"Nothing was read in. {where}: {row.faults[0]}.")
    known = Consumable.objects.within(scope).in_bulk([item.key for item in plan.changed])
    for item in (*plan.new, *plan.changed):
        row_of = known[item.key] if item.key else Consumable(business=business)
        _keep(item, row_of)
        if item.stock.by_place:
            word = StockWord(at, at, by, uuid5(uid, f"{item.line}"), FIRST_STOCK)
            _put_there(item, row_of, places, word)
    return plan


def _wait_for_others(scope: Scope) -> None:
    """Of two lists at once the later finds what the earlier made. Where nothing is in the kit yet, they wait at the
    store.
    """
    store_of(scope).locked()
    lock_stock(scope=scope)


def _keep(item: PlannedItem, row: Consumable) -> None:
    for name, value in vars(item.sheet).items():
        if name != "recipe":
            setattr(row, name, value)
    try:
        save_consumable(consumable=row, lines=_lines(item.sheet))
    except RuleBroken as fault:
        raise _refused(item, fault.message) from fault
    except ValidationError as fault:
        raise _refused(item, " ".join(fault.messages)) from fault


def _lines(sheet: KitSheet) -> list[TypedLine]:
    return [
        TypedLine(per, quantity, None, block_kind) for (per, block_kind), quantity in sheet.recipe.items()
    ]


def _put_there(item: PlannedItem, row: Consumable, places: dict[str, StockPlace], word: StockWord) -> None:
    stock, store = item.stock, next(place for place in places.values() if place.van_id is None)
    bought = BoughtItem(row, stock.total, stock.cost, stock.code, stock.expires_on)
    try:
        (line,) = buy_stock(place=store, bought=[bought], word=word)
        for name, quantity in stock.by_place.items():
            if places[name] != store:
                moved = StockWord(word.at, word.noted_at, word.by, uuid5(word.uid, name), word.note)
                way = Way(store, places[name])
                move_stock(way=way, moved=[Amount(row, quantity, line.lot)], word=moved)
    except RuleBroken as fault:
        raise _refused(item, fault.message) from fault


def _refused(item: PlannedItem, words: str) -> KitListRefused:
    return KitListRefused(f"Nothing was read in. Line {item.line}, {item.sheet.name}: {words}")
