"""What will not come is not waited for."""

from uuid import uuid4

import pytest

from tests.factories import NOON, make_house, make_kit
from visits.models import SupplyLine
from visits.services.kit.call_off_order import call_off_order, expect_no_more
from visits.services.kit.place_order import OrderRefused, OrderWord, WantedLine, place_order


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def order(house):
    lines = [WantedLine(item.pk, 3) for item in make_kit(house.business).values()]
    word = OrderWord("Moor Supplies", lines, uuid4(), note="By telephone.")
    return place_order(business=house.business, word=word, at=NOON, by=house.office)


def open_lines(house):
    return SupplyLine.objects.within(house.scope).filter(closed_at__isnull=True).count()


def test_an_order_called_off_says_why_and_is_expected_no_more(house, order):
    row = call_off_order(order=order, because="They are closed.", at=NOON)
    assert row.called_off_at == NOON
    assert row.note == "By telephone. Called off: They are closed."
    assert open_lines(house) == 0
    # Pressed again, it stays as it is.
    assert call_off_order(order=order, because="Again", at=NOON).note == row.note


def test_an_order_that_came_is_not_called_off(house, order):
    SupplyLine.objects.within(house.scope).update(arrived=3, closed_at=NOON)
    with pytest.raises(OrderRefused, match="Nothing of this order is still to come"):
        call_off_order(order=order, because="", at=NOON)


def test_the_rest_of_a_line_will_not_come(house, order):
    lines = list(SupplyLine.objects.within(house.scope).filter(order=order).order_by("pk"))
    lines[0].arrived = 1
    lines[0].save()
    expect_no_more(line=lines[0], at=NOON)
    expect_no_more(line=lines[0], at=NOON)
    assert open_lines(house) == 2
    for line in lines[1:]:
        expect_no_more(line=line, at=NOON)
    order.refresh_from_db()
    assert order.called_off_at is None, "one piece of it came"


def test_an_order_of_which_nothing_comes_is_called_off(house, order):
    for line in SupplyLine.objects.within(house.scope).filter(order=order):
        expect_no_more(line=line, at=NOON)
    order.refresh_from_db()
    assert order.called_off_at == NOON
