"""The pages' forecast is the one that orders are told by."""

from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

import pytest

from tests.factories import (
    TUESDAY_TEN,
    blocked_foot,
    make_cow,
    make_house,
    make_kit,
    planned,
    put_down,
    under_way,
)
from trimops.kernel.clock import local_day
from visits.models import SupplyLine, SupplyOrder
from visits.selectors.kit.item_story import item_story
from visits.selectors.kit.kit_at_a_glance import kit_at_a_glance
from visits.selectors.kit.kit_forecast import kit_forecast
from visits.services.kit.buy_stock import BoughtItem, buy_stock
from visits.services.kit.stock_place import store_of
from visits.services.kit.stock_word import StockWord

TODAY = TUESDAY_TEN.date()


@pytest.fixture
def house(db):
    """A cow with a block, glue with a date, wraps on order, and a visit to come."""
    house = make_house()
    kit = make_kit(house.business)
    kit["glue"].shelf_days = 20
    kit["glue"].save()
    word = StockWord(TUESDAY_TEN - timedelta(days=8), TUESDAY_TEN, house.owner, uuid4())
    bought = [BoughtItem(kit["glue"], Decimal(300), Decimal(27)), BoughtItem(kit["wood"], Decimal(6))]
    buy_stock(place=store_of(house.scope), bought=bought, word=word)
    put_down(under_way(house.farm, house.van), make_cow(house.farm, "412"), blocked_foot())
    planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=2))
    order = SupplyOrder.objects.create(business=house.business, ordered_at=TUESDAY_TEN, by=house.owner)
    SupplyLine.objects.create(
        business=house.business,
        order=order,
        consumable=kit["wrap"],
        quantity=120,
        arrived=20,
        expected_on=TODAY + timedelta(days=4),
    )
    return house


def test_glance_and_item_tell_what_the_order_list_is_told(house):
    wanted = kit_forecast(house.scope, TODAY)
    rows = kit_at_a_glance(house.business, TODAY).rows
    assert {row.item.pk: row.forecast for row in rows} == wanted
    stories = [item_story(house.business, row.item, TODAY) for row in rows]
    assert {story.stock.consumable.pk: story.forecast for story in stories} == wanted


def test_what_is_on_its_way_and_the_first_date_stand_in_the_row(house):
    rows = {row.item.name: row for row in kit_at_a_glance(house.business, TODAY).rows}
    assert [each.quantity for each in rows["Wrap"].on_order] == [Decimal(100)]
    assert not rows["Wrap"].is_late
    bought_on = local_day(TUESDAY_TEN - timedelta(days=8), house.business.zone)
    assert rows["Glue"].next_lot.expires_on == bought_on + timedelta(days=20)
    assert rows["Glue"].next_lot.is_soon
    assert rows["Glue"].below == ("Van 1",)


def test_one_out_of_use_has_no_forecast_and_its_page_still_opens(house):
    item = kit_at_a_glance(house.business, TODAY).rows[-1].item
    item.is_active = False
    item.save()
    story = item_story(house.business, item, TODAY)
    assert story.forecast is None
    assert (story.fan, story.weeks) == ("", [])
