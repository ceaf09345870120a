from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal as D

import pytest

from invoicing.domain.mileage_allowance import AllowanceRate
from invoicing.domain.travel_charge import DistanceUnit
from invoicing.selectors.mileage_log import allowance_rates
from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.set_mileage_rate import MileageRateRefused, set_mileage_rate

RATE = AllowanceRate(date(2026, 4, 6), DistanceUnit.MILE, D("0.45"), D(10000), D("0.25"), (4, 6))


def test_a_rate_comes_back_as_it_was_put_down(house):
    set_mileage_rate(business=house.business, rate=replace(RATE, first_rate=D("0.40")), source="A page")
    set_mileage_rate(business=house.business, rate=RATE, source="A page")
    assert allowance_rates(house.scope) == [RATE]


def test_what_makes_no_sense_is_refused(house):
    days = [{"begins": (2, 30)}, {"begins": (13, 1)}]
    for wrong in (*days, {"up_to": D(0)}, {"up_to": D("9.5")}, {"first_rate": D(-1)}):
        with pytest.raises(MileageRateRefused):
            set_mileage_rate(business=house.business, rate=replace(RATE, **wrong), source="A page")


def test_it_says_where_it_was_read(house):
    with pytest.raises(MileageRateRefused, match="read"):
        set_mileage_rate(business=house.business, rate=RATE, source="")


def test_sums_of_a_closed_period_stay_as_they_are(house):
    closed = date(2026, 4, 30)
    at = datetime(2026, 6, 1, 12, tzinfo=UTC)
    lock_period(scope=house.scope, until=closed, why="Sent off", at=at, by=house.owner)
    with pytest.raises(PeriodLocked, match="The allowance's first day is 6 April 2026"):
        set_mileage_rate(business=house.business, rate=RATE, source="A page")
    set_mileage_rate(
        business=house.business, rate=replace(RATE, valid_from=closed + timedelta(days=1)), source="A page"
    )
