"""What was bought stands in the ledger with its lot."""

from datetime import date, timedelta
from decimal import Decimal
from uuid import uuid4

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, make_house, make_kit
from tests.visits.services.kit.stock_words import ledger, word
from visits.models import StockCount, StockLot, StockMovement, SupplyLine, SupplyOrder
from visits.services.kit.buy_stock import BoughtItem, buy_stock
from visits.services.kit.stock_place import place_of_van, store_of
from visits.services.kit.stock_word import StockRefused


@pytest.fixture
def kit(house):
    kit = make_kit(house.business)
    kit["glue"].shelf_days = 300
    kit["glue"].supplier = "The yard shop"
    kit["glue"].save()
    return kit


@pytest.fixture
def store(house):
    return store_of(house.scope)


def glue(kit, quantity="800", **words):
    return BoughtItem(kit["glue"], Decimal(quantity), **words)


def test_each_thing_of_a_delivery_has_its_lot_and_its_cost(house, kit, store):
    wood = BoughtItem(kit["wood"], Decimal(24), None, expires_on=None)
    lines = buy_stock(
        place=store, bought=[glue(kit, cost=Decimal("36.50"), lot_code=" G-17 "), wood], word=word(house)
    )
    assert [(line.quantity, line.cost, line.place) for line in lines] == [
        (800, Decimal("36.50"), store),
        (24, None, store),
    ]
    first, second = (line.lot for line in lines)
    assert (first.code, first.supplier, first.bought_on) == ("G-17", "The yard shop", NOON.date())
    assert first.expires_on == NOON.date() + timedelta(days=300)
    assert (second.expires_on, second.supplier) == (None, "")


def test_a_date_on_the_label_goes_before_the_shelf_days(house, kit, store):
    typed = date(2026, 5, 1)
    (line,) = buy_stock(
        place=store, bought=[glue(kit, expires_on=typed)], word=word(house), supplier="Another shop"
    )
    assert (line.lot.expires_on, line.lot.supplier) == (typed, "Another shop")


def test_a_double_click_buys_once(house, kit, store):
    said = word(house, uid=uuid4())
    first, again = (buy_stock(place=store, bought=[glue(kit)], word=said) for _ in range(2))
    assert again == first
    assert StockLot.objects.within(house.scope).count() == 1


def test_bought_before_a_count_and_typed_after_it_leaves_the_count_true(house, kit, store):
    StockCount.objects.create(
        business=house.business,
        consumable=kit["glue"],
        place=store,
        counted=500,
        at=NOON,
        by=house.owner,
        noted_at=NOON,
    )
    buy_stock(place=store, bought=[glue(kit)], word=word(house, at=NOON - timedelta(days=1)))
    assert ledger(kit["glue"]) == [("bought", False, 800), ("counted", False, -300)]


def test_what_came_of_an_order_is_noted_on_its_line(house, kit, store):
    order = SupplyOrder.objects.create(business=house.business, ordered_at=NOON, by=house.owner)
    line = SupplyLine.objects.create(
        business=house.business, order=order, consumable=kit["glue"], quantity=1600, expected_on=NOON.date()
    )
    said = [word(house) for _ in range(2)]
    for each in (said[0], said[0]):
        buy_stock(place=store, bought=[glue(kit, line=line)], word=each)
    line.refresh_from_db()
    assert (line.arrived, line.closed_at) == (800, None)
    buy_stock(place=store, bought=[glue(kit, "700", line=line, closes=True)], word=said[1])
    line.refresh_from_db()
    assert (line.arrived, line.closed_at) == (1500, said[1].noted_at)
    with pytest.raises(StockRefused, match="not what that order line was for"):
        buy_stock(place=store, bought=[BoughtItem(kit["wood"], Decimal(1), line=line)], word=word(house))


def test_all_that_is_wrong_is_said_at_once_and_nothing_is_kept(house, kit, store):
    wrong = [
        glue(kit, "0"),
        BoughtItem(kit["wood"], Decimal("2.5")),
        BoughtItem(kit["wrap"], Decimal(1), Decimal(-1)),
        glue(kit, "1", expires_on=date(2016, 5, 1)),
    ]
    with pytest.raises(StockRefused) as refusal:
        buy_stock(place=store, bought=wrong, word=word(house))
    for words in ("say how much", "whole pieces", "nought or more", "past it when it was bought"):
        assert words in refusal.value.message
    assert not StockMovement.objects.within(house.scope).exists()


@pytest.mark.parametrize("ahead", [timedelta(days=3), timedelta(days=-4000)])
def test_a_moment_nobody_can_mean_is_refused(house, kit, store, ahead):
    with pytest.raises(StockRefused):
        buy_stock(place=store, bought=[glue(kit)], word=word(house, at=NOON + ahead))
    with pytest.raises(StockRefused, match="Nothing"):
        buy_stock(place=store, bought=[], word=word(house))


def test_nothing_of_another_business_can_be_bought(house, kit):
    other = place_of_van(make_house("Another business").van)
    with pytest.raises(ValidationError):
        buy_stock(place=other, bought=[glue(kit)], word=word(house))
    assert not StockLot.objects.within(other.scope).exists()
