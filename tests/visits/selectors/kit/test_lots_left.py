"""Which lots lie where."""

from datetime import date, timedelta
from decimal import Decimal

import pytest

from tests.factories import NOON, make_house, make_kit, put_down, under_way
from tests.factories import blocked_foot as blocked
from tests.visits.services.kit.stock_words import amount, bought, word
from visits.models import StockMovement
from visits.selectors.kit.lots_left import all_lots_left, lots_left
from visits.selectors.kit.reckoned_items import reckoned_items
from visits.services.kit.count_stock import count_stock
from visits.services.kit.stock_place import place_of_van, store_of


@pytest.fixture
def kit(house):
    return make_kit(house.business)


@pytest.fixture
def lots(house, kit):
    """Two lots of glue in the van, the one that was bought later is older by its date."""
    van = place_of_van(house.van)
    days = ((date(2027, 1, 1), 2), (date(2026, 8, 1), 1))
    return [
        bought(van, kit["glue"], 30, "3.00", at=NOON - timedelta(days=ago), expires_on=expires).lot
        for expires, ago in days
    ]


def told(house, kit):
    return [(at.lot, at.quantity) for at in lots_left(house.scope, kit["glue"])]


def test_the_oldest_date_is_first_and_used_first(house, kit, lots):
    late, soon = lots
    assert told(house, kit) == [(soon, 30), (late, 30)]
    put_down(under_way(house.farm, house.van), house.cow, blocked())
    assert told(house, kit) == [(soon, 5), (late, 30)]


def test_stock_nobody_knows_the_number_of_is_last(house, kit, lots):
    count_stock(place=store_of(house.scope), counted=[amount(kit["glue"], 7)], word=word(house))
    assert (None, Decimal(7)) in told(house, kit)


def test_the_past_is_gone_through_once_until_something_is_heard_of_it(
    house, kit, lots, django_assert_num_queries
):
    van = place_of_van(house.van)
    bought(van, kit["glue"], 4, at=NOON + timedelta(days=100))
    whole = [(lots[1], 30), (lots[0], 30), (None, 4)]
    for queries in (6, 5):
        with django_assert_num_queries(queries):
            found = told(house, kit)
        assert [quantity for _, quantity in found] == [quantity for _, quantity in whole]
    bought(van, kit["glue"], 5, at=NOON - timedelta(days=9))
    for queries in (6, 5):
        with django_assert_num_queries(queries):
            assert [quantity for _, quantity in told(house, kit)] == [30, 30, 5, 4]
    put_down(under_way(house.farm, house.van), house.cow, blocked())
    with django_assert_num_queries(6):
        assert [quantity for _, quantity in told(house, kit)] == [5, 30, 5, 4]


def test_a_farm_that_is_erased_takes_its_visits_off_the_lines(house, kit, lots):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked())
    rows = StockMovement.objects.within(house.scope)
    before = reckoned_items(house.scope, [kit["glue"].pk])[kit["glue"].pk]
    rows.filter(trim__visit=visit).update(trim=None)
    assert reckoned_items(house.scope, [kit["glue"].pk])[kit["glue"].pk] == before


def test_all_at_once_takes_as_many_queries(house, kit, lots, django_assert_num_queries):
    bought(store_of(house.scope), kit["wood"], 24)
    with django_assert_num_queries(6):
        found = all_lots_left(house.scope)
    assert {item: len(parts) for item, parts in found.items()} == {kit["glue"].pk: 2, kit["wood"].pk: 1}
    assert found[kit["glue"].pk] == lots_left(house.scope, kit["glue"])
    assert all_lots_left(make_house("Another business").scope) == {}
    assert lots_left(house.scope, kit["wrap"]) == ()
