"""A row of each kind of the kit, for the addresses that name one."""

from uuid import uuid4

from tests.factories import NOON, House, make_blade, make_kit, stock_up
from visits.models import Consumable, SupplyOrder
from visits.services.kit.place_order import OrderWord, WantedLine, place_order
from visits.services.kit.stock_place import place_of_van


def kit_of(house: House) -> dict[str, object]:
    """Key of the ring -> primary key."""
    wood = make_kit(house.business)["wood"]
    stock_up(wood, 40, at=NOON)
    order = _ordered(house, wood)
    return {
        "consumable": wood.pk,
        "stock_place": place_of_van(house.van).pk,
        "supply_order": order.pk,
        "supply_line": order.lines.within(house.scope).get().pk,
        "blade": make_blade(house.van, "Red handle").pk,
    }


def _ordered(house: House, item: Consumable) -> SupplyOrder:
    word = OrderWord("Moor Supplies", [WantedLine(item.pk, 2)], uuid4())
    return place_order(business=house.business, word=word, at=NOON, by=house.office)
