"""The log counts from the start of the allowance year, whatever period is looked at."""

from datetime import date
from decimal import Decimal as D

import pytest

from invoicing.domain.tax_periods import month_of
from invoicing.models import Journey, MileageRate, MoneyRules
from invoicing.selectors.mileage_log import mileage_log
from tests.factories import NOON, make_business

MARCH, APRIL = month_of(date(2026, 3, 1)), month_of(date(2026, 4, 1))


@pytest.fixture
def business(db):
    made = make_business()
    MoneyRules.objects.create(business=made, distance_unit="SMI")
    drive(made, date(2025, 3, 1), "999")
    drive(made, date(2025, 5, 1), "9990")
    drive(made, date(2026, 3, 2), "30")
    drive(made, date(2026, 4, 5), "16.1", "KMT")
    drive(made, date(2026, 4, 6), "10")
    return made


def drive(business, on, distance, unit="SMI"):
    words = {"from_words": "Yard", "to_words": "Low Croft", "purpose": "Visit", "source": "odometer"}
    Journey.objects.create(business=business, on=on, distance=D(distance), unit=unit, noted_at=NOON, **words)


def allow(business, since=date(2024, 4, 6)):
    MileageRate.objects.create(
        business=business,
        valid_from=since,
        unit="SMI",
        first_rate=D("0.45"),
        up_to=10000,
        then_rate=D("0.25"),
        year_begins_month=4,
        year_begins_day=6,
        source="A page",
    )


def test_the_limit_is_met_where_it_was(business):
    """9,990 miles before: 10 x 45p + 20 x 25p."""
    allow(business)
    log = mileage_log(business, MARCH)
    assert (log.before, log.distance, log.amount) == (9990, 30, D("9.50"))


def test_a_new_year_begins_within_the_month_and_kilometres_are_told_in_miles(business):
    """10.0 of 10.004 miles at 25p, then ten at 45p of the new year."""
    allow(business)
    log = mileage_log(business, APRIL)
    assert [drive.distance for drive in log.drives] == [D("10.0"), 10]
    assert [drive.allowed.amount for drive in log.drives] == [D("2.50"), D("4.50")]


def test_days_without_a_rate_are_counted(business):
    allow(business, since=date(2026, 4, 6))
    log = mileage_log(business, APRIL)
    assert (log.without_rate, log.amount) == (1, D("4.50"))


def test_another_business_has_no_part_in_it(business):
    log = mileage_log(make_business("Elsewhere Trimming"), MARCH)
    assert (log.drives, log.rate) == ([], None)
