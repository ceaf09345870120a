"""The price of change, as it is stated."""

from datetime import datetime, timedelta

import pytest

from visits.domain.planning.replan.plan_in_force import InForce, Promise
from visits.domain.planning.replan.price_of_change import PriceOfChange, price_of_one, price_paid

TEN = datetime.fromisoformat("2026-03-02T10:00:00+00:00")
PRICE = PriceOfChange(visit=1000, told_hour=300, minutes=30)


@pytest.mark.parametrize(
    ("promise", "shift", "minutes", "paid"),
    [
        (Promise.PLANNED, "mon", 0, 0),
        (Promise.PLANNED, "mon", 240, 0),
        (Promise.PLANNED, "tue", 0, 1000),
        (Promise.TOLD, "mon", 30, 0),
        (Promise.TOLD, "mon", -30, 0),
        (Promise.TOLD, "mon", 31, 300),
        (Promise.TOLD, "mon-ben", 0, 1000),
        (Promise.TOLD, "tue", 24 * 60, 1300),
        (Promise.CONFIRMED, "tue", 24 * 60, 1300),
    ],
)
def test_a_visit_pays_for_its_day_or_van_and_a_told_hour_on_top(promise, shift, minutes, paid):
    entry = InForce("a", "mon", TEN, promise)
    assert price_of_one(entry, (shift, TEN + timedelta(minutes=minutes)), PRICE) == paid


def test_leaving_out_pays_for_both():
    assert price_of_one(InForce("a", "mon", TEN), None, PRICE) == 1000
    assert price_of_one(InForce("a", "mon", TEN, Promise.TOLD), None, PRICE) == 1300


def test_the_hour_told_counts_and_not_the_one_since_put_into_the_diary():
    entry = InForce("a", "mon", TEN, Promise.TOLD, TEN - timedelta(hours=1))
    assert price_of_one(entry, ("mon", TEN), PRICE) == 300


def test_all_of_it_is_summed():
    entries = [InForce("a", "mon", TEN), InForce("b", "mon", TEN, Promise.TOLD), InForce("c", "mon", TEN)]
    assert price_paid(entries, {"a": ("tue", TEN), "b": ("mon", TEN)}, PRICE) == 2000
