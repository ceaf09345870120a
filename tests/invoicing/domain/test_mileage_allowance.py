"""The allowance for miles: published worked examples, and that the parts add up."""

from datetime import date, timedelta
from decimal import Decimal as D

import pytest
from hypothesis import given
from hypothesis import strategies as st

from invoicing.domain.mileage_allowance import (
    AllowanceRate,
    Driven,
    allowances,
    converted,
    in_unit,
    rate_on,
    year_start,
)
from invoicing.domain.travel_charge import DistanceUnit

KM, MILE = DistanceUnit.KILOMETRE, DistanceUnit.MILE
START = date(2026, 4, 6)
# https://www.gov.uk/simpler-income-tax-simplified-expenses/vehicles- (read; checkdata uk-mileage)
CAR = AllowanceRate(START, MILE, D("0.45"), D(10000), D("0.25"), (4, 6))
MOTORCYCLE = AllowanceRate(START, MILE, D("0.24"), None, D(0), (4, 6))


def drive(distance, day=START, unit=MILE):
    return Driven(day, D(distance), unit)


def sum_of(drives, *rates):
    return sum(part.amount for part in allowances(drives, rates))


@pytest.mark.parametrize(
    ("miles", "rate", "pounds"), [(11_000, CAR, "4750.00"), (1_000, MOTORCYCLE, "240.00")]
)
def test_the_worked_example(miles, rate, pounds):
    """11,000 miles: 10,000 x 45p + 1,000 x 25p = 4,750.00 (gov.uk, read); motorcycle 24p (rate read, sum ours)."""
    drives = [drive(100, START + timedelta(days=number)) for number in range(miles // 100)]
    assert sum_of(drives, rate) == D(pounds)


def test_a_drive_across_the_limit_is_parted():
    _, across = allowances([drive(9990), drive(30)], [CAR])
    assert (across.at_first, across.at_then, across.amount) == (10, 20, D("9.50"))


def test_each_year_begins_anew_on_its_own_day():
    days = [date(2027, 4, 5), date(2027, 4, 6)]
    old, new = allowances([drive(9_999), *(drive(10, day) for day in days)], [CAR])[1:]
    assert (old.amount, new.amount) == (D("2.70"), D("4.50"))  # 1 x 45p + 9 x 25p, then 10 x 45p


def test_a_rate_changed_within_the_year_keeps_the_distance_so_far():
    dearer = AllowanceRate(date(2026, 10, 1), MILE, D("0.50"), D(10000), D("0.30"), (4, 6))
    first, second = allowances([drive(9_999), drive(10, date(2026, 10, 1))], [CAR, dearer])
    assert (first.amount, second.amount) == (D("4499.55"), D("3.20"))  # 1 x 50p + 9 x 30p


def test_kilometres_count_toward_a_rate_by_the_mile():
    (part,) = allowances([drive("160.9", unit=KM)], [CAR])
    assert part.at_first.quantize(D("0.001")) == D("99.979")
    assert part.amount == D("44.99")


def test_where_no_rate_held_nothing_is_allowed():
    (part,) = allowances([drive(10, START - timedelta(days=1))], [CAR])
    assert (part.rate, part.amount) == (None, 0)
    assert rate_on(START, []) is None


@pytest.mark.parametrize(("unit", "distance"), [(KM, "16.1"), (MILE, "10.0")])
def test_metres_are_told_with_one_decimal(unit, distance):
    assert in_unit(16093.4, unit) == D(distance)


def test_the_same_unit_is_left_as_it_is():
    assert converted(D("12.3"), KM, KM) == D("12.3")
    assert converted(D(1), MILE, KM) == D("1.609344")


@pytest.mark.parametrize(
    ("day", "begins", "first"),
    [
        (date(2026, 4, 5), (4, 6), date(2025, 4, 6)),
        (date(2026, 4, 6), (4, 6), date(2026, 4, 6)),
        (date(2026, 12, 31), (1, 1), date(2026, 1, 1)),
        (date(2027, 2, 28), (2, 29), date(2027, 2, 28)),
        (date(2026, 12, 30), (12, 31), date(2025, 12, 31)),
    ],
)
def test_a_year_begins_where_it_is_said(day, begins, first):
    assert year_start(day, begins) == first


@given(st.lists(st.decimals("0.1", 900, places=1), max_size=60), st.decimals("0.001", 2, places=4))
def test_the_parts_of_a_year_add_up_to_the_year(distances, rate):
    """Each drive's amount is rounded, and yet their sum is the whole year's allowance rounded once."""
    then = rate / 2
    limit = AllowanceRate(START, KM, rate, D(1000), then, (4, 6))
    whole = sum(distances, D(0))
    expected = min(whole, D(1000)) * rate + max(D(0), whole - 1000) * then
    assert abs(sum_of([drive(d, unit=KM) for d in distances], limit) - expected) <= D("0.005")
