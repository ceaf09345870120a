"""What was ordered is noted once, expected on its day, and not ordered twice by two people."""

from datetime import date
from uuid import uuid4

import pytest

from tests.factories import NOON, make_house, make_kit
from visits.models import SupplyLine, SupplyOrder
from visits.services.kit.place_order import (
    OrderedMeanwhile,
    OrderRefused,
    OrderWord,
    WantedLine,
    place_order,
)


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def kit(house):
    return make_kit(house.business)


def order(house, *lines, **words):
    wanted = [WantedLine(item.pk, packs) for item, packs in lines]
    word = OrderWord("Moor Supplies", wanted, words.pop("uid", uuid4()), **words)
    return place_order(business=house.business, word=word, at=NOON, by=house.office)


def test_each_line_is_expected_after_its_own_lead_days(house, kit):
    kit["wood"].pack, kit["wood"].lead_days = 40, 3
    kit["wood"].save()
    row = order(house, (kit["wood"], 2), (kit["glue"], 1), mailed_to="moor@example.invalid")
    lines = SupplyLine.objects.within(house.scope).filter(order=row).order_by("pk")
    # From a Monday, three days and five: the Saturday is a Monday.
    assert [(line.quantity, line.arrived, line.expected_on) for line in lines] == [
        (80, 0, date(2026, 3, 5)),
        (1, 0, date(2026, 3, 9)),
    ]
    assert (row.supplier, row.mailed_to, row.by) == ("Moor Supplies", "moor@example.invalid", house.office)


def test_sent_twice_it_is_noted_once(house, kit):
    uid = uuid4()
    first = order(house, (kit["wood"], 1), uid=uid)
    assert order(house, (kit["wood"], 1), uid=uid) == first
    assert SupplyOrder.objects.within(house.scope).count() == 1


def test_what_somebody_ordered_meanwhile_is_told(house, kit):
    first = order(house, (kit["wood"], 1))
    with pytest.raises(OrderedMeanwhile, match="has ordered 1 of Wooden block meanwhile"):
        order(house, (kit["wood"], 1))
    seen = frozenset(SupplyLine.objects.within(house.scope).values_list("pk", flat=True))
    assert order(house, (kit["wood"], 1), seen=seen) != first


@pytest.mark.parametrize("packs", [0, -1, 1001])
def test_no_nonsense(house, kit, packs):
    with pytest.raises(OrderRefused, match="packs cannot be meant"):
        order(house, (kit["wood"], packs))


def test_nothing_twice_and_nobody_elses(house, kit):
    with pytest.raises(OrderRefused, match="Nothing is chosen"):
        order(house)
    with pytest.raises(OrderRefused, match="twice"):
        order(house, (kit["wood"], 1), (kit["wood"], 2))
    other = make_kit(make_house("Other").business)["wood"]
    with pytest.raises(OrderRefused, match="not in your kit"):
        order(house, (other, 1))
    assert not SupplyOrder.objects.within(house.scope).exists()
