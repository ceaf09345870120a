"""The order list: by supplier, what is pressing first; what is on its way, what is late."""

from datetime import timedelta
from uuid import uuid4

import pytest

from tests.factories import NOON, TUESDAY_TEN, make_house, make_kit, planned, stock_up
from visits.models import SupplyLine
from visits.selectors.kit.order_list import closed_orders, order_list
from visits.services.kit.call_off_order import call_off_order
from visits.services.kit.place_order import OrderWord, WantedLine, place_order

MONDAY = NOON.date()
MOST_QUERIES = 20


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def kit(house):
    """A hundred cows on the day after today's order is here. One wrap; blocks and glue enough, from others."""
    kit = make_kit(house.business)
    kit["wrap"].pack, kit["wrap"].price, kit["wrap"].supplier = 10, 12, "Low Moor"
    kit["wrap"].lead_days = 7
    kit["wood"].supplier = kit["glue"].supplier = "Fellside"
    kit["wood"].supplier_email = "sales@example.invalid"
    for item in kit.values():
        item.save()
    stock_up(kit["wrap"], 1, at=NOON)
    stock_up(kit["wood"], 400, at=NOON)
    stock_up(kit["glue"], 40000, at=NOON)
    planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=7), head_count=100)
    return kit


def order(house, *items):
    word = OrderWord("Low Moor", [WantedLine(item.pk, 2) for item in items], uuid4())
    return place_order(business=house.business, word=word, at=NOON, by=house.office)


def test_suppliers_of_whom_something_is_wanted_today_come_first(house, kit):
    told = order_list(house.scope, MONDAY)
    assert [(each.supplier, each.email) for each in told.suppliers] == [
        ("Low Moor", ""),
        ("Fellside", "sales@example.invalid"),
    ]
    (row,) = told.today
    assert row.name == "Wrap"
    assert row.packs * 10 == row.forecast.order_quantity
    assert row.cost == row.packs * 12
    assert row.chance.endswith(" %")
    assert len(told.suppliers[1].not_yet) == 2


def test_nothing_is_advised_of_what_nobody_has_counted(house):
    make_kit(house.business)
    planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=7), head_count=100)
    told = order_list(house.scope, MONDAY)
    assert told.today == []
    assert told.next_by is None
    assert len(told.untold) == len(told.suppliers[0].not_yet) == 3


def test_what_is_ordered_is_on_its_way_and_the_list_falls_silent(house, kit):
    kit["wrap"].pack = 100
    kit["wrap"].save()
    row = order(house, kit["wrap"])
    told = order_list(house.scope, MONDAY)
    assert not [each for supplier in told.suppliers for each in supplier.soon]
    (on_its_way,) = told.orders
    assert (on_its_way.order, on_its_way.is_late) == (row, False)
    assert told.seen == [SupplyLine.objects.within(house.scope).get().pk]
    assert [each.order for each in order_list(house.scope, MONDAY + timedelta(days=8)).late] == [row]


def test_what_came_or_was_called_off_is_not_waited_for(house, kit):
    row = order(house, kit["wrap"])
    assert closed_orders(house.scope) == []
    call_off_order(order=row, because="", at=NOON)
    assert order_list(house.scope, MONDAY).orders == []
    assert closed_orders(house.scope) == [row]


def test_nobody_elses_and_a_fixed_number_of_queries(house, kit, django_assert_max_num_queries):
    other = make_house("Other")
    order(other, make_kit(other.business)["wood"])
    order(house, kit["wrap"])
    with django_assert_max_num_queries(MOST_QUERIES):
        told = order_list(house.scope, MONDAY)
    assert [each.order.business_id for each in told.orders] == [house.business.pk]
