from datetime import date, time, timedelta
from decimal import Decimal

import pytest

from invoicing.domain.out_of_hours import UsualHours
from invoicing.domain.price_steps import PriceStep, StepRule
from invoicing.domain.pricing import PriceItem
from invoicing.domain.travel_charge import Band, DistanceUnit, TravelRule, TravelTerms
from invoicing.models import Price, PriceList
from invoicing.selectors.price_book import price_book
from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.set_prices import (
    ListBeginsThen,
    PricesBilledOn,
    TaxRateUnknown,
    TravelPriceMissing,
    set_prices,
)
from tests.factories import NOON, TUESDAY_TEN
from tests.invoicing.drafts import draft, issue
from tests.invoicing.services.price_sheets import JANUARY, JUNE, MARCH, rate, sheet


@pytest.fixture
def business(house):
    rate(house.business)
    return house.business


def held(house, day):
    return price_book(house.scope, house.farm, day)


def test_the_prices_of_the_day_hold(house, business):
    set_prices(business=business, sheet=sheet(MARCH, "12.00"))
    set_prices(business=business, sheet=sheet(JUNE, "13.50"))
    assert held(house, date(2026, 5, 31)).steps_of(PriceItem.FUNCTIONAL) == (PriceStep(1, Decimal(12)),)
    assert held(house, JUNE).steps_of(PriceItem.FUNCTIONAL) == (PriceStep(1, Decimal("13.5")),)


def test_a_whole_list_is_kept(house, business):
    bands = (Band(Decimal(10), Decimal(8)), Band(None, Decimal(20)))
    told = sheet(
        steps=(PriceStep(1, Decimal(14)), PriceStep(21, Decimal(12))),
        step_rule=StepRule.SLICES,
        travel=TravelTerms(TravelRule.BAND, DistanceUnit.MILE, bands),
        minimum=Decimal(80),
        guarantee_days=21,
        hours=UsualHours(time(7), time(18), "123456"),
    )
    set_prices(business=business, sheet=told)
    found = held(house, MARCH)
    assert found.prices[PriceItem.FUNCTIONAL] == told.prices[0].steps
    assert (found.step_rule, found.travel, found.hours) == (told.step_rule, told.travel, told.hours)
    assert (found.minimum, found.guarantee_days) == (80, 21)


def test_a_list_that_was_not_billed_on_is_rewritten(house, business):
    row = set_prices(business=business, sheet=sheet())
    again = set_prices(business=business, sheet=sheet(MARCH + timedelta(days=1), "12.50"), instead_of=row)
    assert again.pk == row.pk
    assert PriceList.objects.within(house.scope).count() == 1
    assert Price.objects.within(house.scope).count() == 2
    assert held(house, JUNE).steps_of(PriceItem.FUNCTIONAL)[0].unit_price == Decimal("12.50")


def test_a_list_that_was_billed_on_stays_as_it_is_and_a_later_one_may_begin(house, business):
    row = set_prices(business=business, sheet=sheet(MARCH, code="usual", prices=_everything()))
    before = set_prices(business=business, sheet=sheet(JANUARY))
    issue(draft(house), house)
    with pytest.raises(PricesBilledOn, match="Make a new list"):
        set_prices(business=business, sheet=sheet(), instead_of=row)
    set_prices(business=business, sheet=sheet(JANUARY, "11"), instead_of=before)
    set_prices(business=business, sheet=sheet(TUESDAY_TEN.date() + timedelta(days=1)))


def _everything():
    given = sheet().prices[0]
    return tuple(type(given)(item, given.steps, "usual") for item in PriceItem)


def test_what_lies_in_a_closed_period_is_refused(house, business):
    row = set_prices(business=business, sheet=sheet(JANUARY))
    lock_period(scope=house.scope, until=date(2026, 2, 28), why="Year end", at=NOON, by=house.owner)
    with pytest.raises(PeriodLocked):
        set_prices(business=business, sheet=sheet(), instead_of=row)
    with pytest.raises(PeriodLocked):
        set_prices(business=business, sheet=sheet(date(2026, 2, 1)))
    set_prices(business=business, sheet=sheet(MARCH))


def test_two_lists_never_begin_on_one_day(business):
    set_prices(business=business, sheet=sheet())
    with pytest.raises(ListBeginsThen, match="begins on that day"):
        set_prices(business=business, sheet=sheet())


def test_a_tax_that_does_not_hold_yet_is_refused(business):
    rate(business, "later", since=JUNE)
    for code in ("unheard", "later"):
        with pytest.raises(TaxRateUnknown, match="Functional trim"):
            set_prices(business=business, sheet=sheet(code=code))


@pytest.mark.parametrize("rule", [TravelRule.DISTANCE, TravelRule.SHARED, TravelRule.BAND])
def test_a_rule_for_travel_needs_what_it_goes_by(business, rule):
    with pytest.raises(TravelPriceMissing):
        set_prices(business=business, sheet=sheet(travel=TravelTerms(rule)))
