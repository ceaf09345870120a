"""What came of an order lies in stock with lot, date and cost; lines close when all came or the rest will not."""

from datetime import date
from decimal import Decimal
from uuid import uuid4

import pytest

from tests.factories import NOON, make_house, make_kit
from tests.visits.services.kit.stock_words import word
from visits.models import StockMovement, SupplyLine
from visits.services.kit.call_off_order import call_off_order
from visits.services.kit.place_order import OrderRefused, OrderWord, WantedLine, place_order
from visits.services.kit.receive_supply import ArrivedLine, receive_supply
from visits.services.kit.stock_place import store_of


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def order(house):
    """Three of each thing."""
    lines = [WantedLine(item.pk, 3) for item in make_kit(house.business).values()]
    said = OrderWord("Moor Supplies", lines, uuid4())
    return place_order(business=house.business, word=said, at=NOON, by=house.office)


def line_of(house, name):
    return SupplyLine.objects.within(house.scope).get(consumable__name=name)


def receive(house, order, *arrived, uid=None):
    place = store_of(house.scope)
    return receive_supply(order=order, place=place, arrived=arrived, word=word(house, uid=uid))


def test_part_of_a_line_comes_and_then_the_rest(house, order):
    line = line_of(house, "Wooden block")
    (row,) = receive(house, order, ArrivedLine(line, Decimal(2), Decimal("4.20"), "A7", date(2027, 1, 31)))
    assert (row.quantity, row.cost, row.lot.code) == (2, Decimal("4.20"), "A7")
    assert (row.lot.expires_on, row.lot.supplier) == (date(2027, 1, 31), "Moor Supplies")
    line = line_of(house, "Wooden block")
    assert (line.arrived, line.closed_at) == (2, None)
    receive(house, order, ArrivedLine(line, Decimal(1)))
    line = line_of(house, "Wooden block")
    assert line.arrived == 3
    assert line.closed_at is not None


def test_the_rest_will_not_come(house, order):
    some, none = line_of(house, "Wooden block"), line_of(house, "Glue")
    came = (ArrivedLine(some, Decimal(1), closes=True), ArrivedLine(none, Decimal(0), closes=True))
    assert len(receive(house, order, *came)) == 1
    for name, arrived in (("Wooden block", 1), ("Glue", 0)):
        line = line_of(house, name)
        assert line.arrived == arrived
        assert line.closed_at is not None
    assert line_of(house, "Wrap").closed_at is None


def test_twice_the_same_form_books_once(house, order):
    uid, line = uuid4(), line_of(house, "Wooden block")
    first = receive(house, order, ArrivedLine(line, Decimal(3)), uid=uid)
    assert receive(house, order, ArrivedLine(line, Decimal(3)), uid=uid) == first
    assert StockMovement.objects.within(house.scope).count() == 1


def test_what_is_closed_or_called_off_is_not_received(house, order):
    line = line_of(house, "Wooden block")
    with pytest.raises(OrderRefused, match="Say how much came"):
        receive(house, order, ArrivedLine(line, Decimal(0)))
    call_off_order(order=order, because="", at=NOON)
    with pytest.raises(OrderRefused, match="noted already or called off"):
        receive(house, order, ArrivedLine(line, Decimal(1)))
    assert not StockMovement.objects.within(house.scope).exists()
