"""The forecast of each consumable of a business."""

from datetime import timedelta
from decimal import Decimal

import pytest

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    make_house,
    make_kit,
    make_user,
    make_van,
    planned,
    put_down,
    stock_up,
    under_way,
)
from tests.visits.selectors.kit.use_rows import used_by_visit
from visits.domain.kit.kit_figures import KitFigures
from visits.models import BusinessFigures, StockLot, SupplyLine, SupplyOrder
from visits.selectors.kit.kit_forecast import day_needs, kit_forecast, terms_of

TUESDAY = TUESDAY_TEN.date()
MOST_QUERIES = 18


@pytest.fixture
def kit(house):
    """Ten blocks and a litre of glue; a visit of forty cows on Thursday."""
    kit = make_kit(house.business)
    stock_up(kit["wood"], 10, at=NOON)
    stock_up(kit["glue"], 1000, at=NOON)
    planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=2), head_count=40)
    return kit


def worked(house, start):
    visit = under_way(house.farm, house.van, start)
    put_down(visit, house.cow, blocked_foot())
    return finish(visit, house.trimmer)


def test_a_new_business_is_told_what_was_published_of_its_booked_cows(house, kit):
    told = kit_forecast(house.scope, TUESDAY)
    glue = told[kit["glue"].pk]
    assert set(told) == {item.pk for item in kit.values()}
    assert (glue.visits, len(glue.days), glue.days[0].day) == (0, 28, TUESDAY)
    # 2.2 % of forty cows, 25 ml each (Cramer 2008), a few in a hundred visits called off.
    assert glue.days[1].expected == 0
    assert glue.days[2].expected == pytest.approx(40 * 0.022 * 25, rel=0.05)
    assert glue.days[-1].run_out == pytest.approx(0, abs=1e-6)
    assert told[kit["wrap"].pk].days[2].run_out > 0.3


def test_visits_of_the_past_are_learned_from_and_less_is_left_of_the_stock(house, kit):
    for week in range(1, 5):
        worked(house, TUESDAY_TEN - timedelta(days=7 * week))
    wood = kit_forecast(house.scope, TUESDAY)[kit["wood"].pk]
    assert wood.visits == 4
    assert wood.days[2].expected > 2
    assert wood.days[-1].expected > wood.days[6].expected
    assert wood.days[-1].run_out > 0.1


def test_what_is_on_order_and_what_goes_past_its_date_is_taken_in(house, kit):
    StockLot.objects.within(house.scope).filter(consumable=kit["glue"]).update(
        expires_on=TUESDAY + timedelta(days=4)
    )
    order = SupplyOrder.objects.create(business=house.business, ordered_at=NOON, by=house.owner)
    SupplyLine.objects.create(
        business=house.business,
        order=order,
        consumable=kit["wrap"],
        quantity=30,
        expected_on=TUESDAY + timedelta(days=1),
    )
    told = kit_forecast(house.scope, TUESDAY)
    assert told[kit["wrap"].pk].days[2].run_out < 0.01
    assert 950 < told[kit["glue"].pk].expiry_loss < 1000
    assert told[kit["glue"].pk].order_quantity > 0


def test_a_consumable_has_its_own_service_or_the_business_s(house, kit):
    BusinessFigures.objects.create(business=house.business, kit={"service_percent": 80, "review_days": 3})
    figures = KitFigures(service_percent=80, review_days=3)
    kit["wood"].service_percent, kit["wood"].shelf_days = Decimal("99.5"), 30
    assert terms_of(kit["wood"], figures).service == pytest.approx(0.995)
    assert (terms_of(kit["wood"], figures).review_days, terms_of(kit["wood"], figures).shelf_days) == (3, 30)
    assert terms_of(kit["glue"], figures).service == pytest.approx(0.8)
    careful = {True: 0, False: 0}
    for is_careful in careful:
        kit["wrap"].service_percent = Decimal("99.9") if is_careful else None
        kit["wrap"].save()
        careful[is_careful] = kit_forecast(house.scope, TUESDAY)[kit["wrap"].pk].order_quantity
    assert careful[True] > careful[False]


def test_a_day_needs_what_its_van_s_visits_use(house, kit):
    other = make_van(house.business, make_user(), "Van 2")
    planned(house.farm, other, TUESDAY_TEN + timedelta(days=2), head_count=10)
    thursday = TUESDAY + timedelta(days=2)
    mine, others = (day_needs(house.scope, thursday, van)[kit["glue"].pk] for van in (house.van, other))
    assert mine.mean == pytest.approx(4 * others.mean, rel=0.02)
    assert mine.quantile(0.95) % 25 == 0
    assert day_needs(house.scope, TUESDAY, house.van)[kit["glue"].pk].quantile(1) == 0


def test_the_number_of_queries_does_not_grow(house, kit, django_assert_max_num_queries):
    visit = worked(house, TUESDAY_TEN - timedelta(days=7))
    used_by_visit(kit["glue"], visit, 10, TUESDAY_TEN)
    make_cow(house.farm, "777")
    with django_assert_max_num_queries(MOST_QUERIES):
        kit_forecast(house.scope, TUESDAY)
    for week in (2, 3):
        worked(house, TUESDAY_TEN - timedelta(days=7 * week))
        planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=week + 1))
    stock_up(kit["wrap"], 7, at=NOON)
    with django_assert_max_num_queries(MOST_QUERIES):
        kit_forecast(house.scope, TUESDAY)


def test_another_business_s_kit_is_not_told(house, kit):
    far = make_house("Far")
    assert kit_forecast(far.scope, TUESDAY) == {}
    assert day_needs(far.scope, TUESDAY + timedelta(days=2), house.van) == {}
