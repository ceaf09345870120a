"""What a van needs for its next day, what it has, what is put in."""

from datetime import timedelta
from decimal import Decimal

import pytest

from tests.factories import NOON, TUESDAY_TEN, make_house, make_kit, planned, stock_up
from visits.models import StockLot, TypedWeather
from visits.selectors.kit.van_check import days_with_visits, van_check

MONDAY, TUESDAY = NOON.date(), TUESDAY_TEN.date()
MOST_QUERIES = 27


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def kit(house):
    """A visit of a hundred cows on Tuesday; blocks and glue in the store, wraps in the van."""
    kit = make_kit(house.business)
    stock_up(kit["wood"], 40, at=NOON)
    stock_up(kit["glue"], 1000, at=NOON)
    stock_up(kit["wrap"], 50, at=NOON, van=house.van)
    planned(house.farm, house.van, TUESDAY_TEN, head_count=100)
    return kit


def check_of(house, day=None):
    return van_check(house.scope, house.van, day, MONDAY)


def test_the_next_day_with_visits_is_loaded_for(house, kit):
    check = check_of(house)
    assert (check.day, check.farms, check.cows) == (TUESDAY, 1, 100)
    rows = {row.consumable.name: row for row in check.rows}
    assert [row.name for row in check.to_load] == ["Wooden block", "Glue"]
    # 2.2 % of a hundred cows, half of the blocks of wood; more is loaded, in pieces and by fifties.
    assert rows["Wooden block"].use.mean < rows["Wooden block"].load.load < 12
    assert rows["Wooden block"].load.load % 1 == 0
    assert rows["Glue"].load.load % 50 == 0
    assert rows["Wrap"].load.load == 0
    assert check.sure >= 0.95
    assert not check.missing


def test_what_the_store_lacks_is_missing_and_lowers_the_chance(house, kit):
    StockLot.objects.within(house.scope).filter(consumable=kit["glue"]).update(expires_on=MONDAY)
    check = check_of(house)
    assert [row.name for row in check.missing] == ["Glue"]
    assert check.sure < 0.5


def test_a_lot_in_the_van_past_its_date_is_to_be_taken_out(house, kit):
    StockLot.objects.within(house.scope).filter(consumable=kit["wrap"]).update(expires_on=MONDAY, code="W1")
    ((row, portion),) = check_of(house).stale
    assert (row.name, portion.code, portion.quantity, row.load.has) == ("Wrap", "W1", 50, 0)


def test_the_typed_forecast_is_held_against_the_label(house, kit):
    kit["glue"].lowest_celsius = Decimal(8)
    kit["glue"].save()
    check = check_of(house)
    assert (check.watches_cold, check.cold) == (True, [])
    TypedWeather.objects.create(
        business=house.business, day=TUESDAY, lowest_celsius=2, by=house.owner, noted_at=NOON
    )
    assert check_of(house).cold[0].startswith("Glue: 2 °C is said, its label stops at 8 °C")


def test_without_visits_there_is_nothing_to_check(house):
    assert check_of(house).day is None
    assert check_of(house, TUESDAY).farms == 0


def test_days_are_those_with_visits_that_have_not_begun(house, kit):
    planned(house.farm, house.van, TUESDAY_TEN - timedelta(hours=3))
    planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=3))
    assert days_with_visits(house.van, MONDAY) == [TUESDAY, TUESDAY + timedelta(days=3)]
    assert days_with_visits(house.van, TUESDAY + timedelta(days=1), 1) == [TUESDAY + timedelta(days=3)]


def test_nobody_elses_stock_and_a_fixed_number_of_queries(house, kit, django_assert_max_num_queries):
    other = make_house("Other")
    stock_up(make_kit(other.business)["wood"], 400, at=NOON)
    with django_assert_max_num_queries(MOST_QUERIES):
        check = check_of(house)
    assert {row.consumable.business_id for row in check.rows} == {house.business.pk}
