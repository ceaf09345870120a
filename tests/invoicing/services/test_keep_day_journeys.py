"""The day's drives go into the log: base, farm to farm, home; twice is once; what was mended stays."""

from datetime import timedelta
from decimal import Decimal as D

import pytest

from invoicing.models import Journey, MoneyRules
from invoicing.services.change_journey import change_journey
from invoicing.services.keep_day_journeys import keep_day_journeys, keep_journeys
from invoicing.services.lock_period import lock_period
from tests.factories import NOON, TUESDAY_TEN, finished, make_farm, make_house
from visits.domain.travel.place import Place
from visits.domain.travel.travel_table import straight_km

DAY = TUESDAY_TEN.date()
LATER = NOON + timedelta(days=7)
YARD, LOW, HIGH = (
    Place(name, *spot) for name, spot in (("y", (54.0, -2.4)), ("l", (54.1, -2.3)), ("h", (54.2, -2.2)))
)


@pytest.fixture
def high(house):
    return make_farm(house.business, "High Croft", by=house.owner, latitude=D("54.2"), longitude=D("-2.2"))


def keep(house, at=LATER):
    return keep_day_journeys(van=house.van, day=DAY, at=at)


def log(house):
    rows = Journey.objects.within(house.scope).order_by("position")
    return [(row.from_words, row.to_words) for row in rows]


def test_a_day_runs_from_the_base_over_its_farms_and_home(house, high):
    finished(high, house.van, TUESDAY_TEN + timedelta(hours=4))
    finished(house.farm, house.van)
    rows = keep(house)
    assert log(house) == [("Yard", "Low Croft"), ("Low Croft", "High Croft"), ("High Croft", "Yard")]
    expected = [straight_km(a, b) * 1.35 for a, b in ((YARD, LOW), (LOW, HIGH), (HIGH, YARD))]
    assert [float(row.distance) for row in rows] == pytest.approx(expected, abs=0.051)
    assert {row.source for row in rows} == {"reckoned, straight line times 1.35"}
    assert [row.purpose for row in rows] == ["Routine visit", "Routine visit", "Home after the last visit"]


def test_it_is_kept_in_the_unit_of_the_business(house):
    MoneyRules.objects.create(business=house.business, distance_unit="SMI")
    finished(house.farm, house.van)
    row = keep(house)[0]
    assert row.unit == "SMI"
    assert float(row.distance) == pytest.approx(straight_km(YARD, LOW) * 1.35 / 1.609344, abs=0.051)


def test_twice_is_once(house):
    finished(house.farm, house.van)
    assert [len(keep(house)) for _ in range(2)] == [2, 0]


def test_a_visit_that_comes_later_has_the_day_told_anew(house, high):
    finished(house.farm, house.van)
    keep(house)
    finished(high, house.van, TUESDAY_TEN + timedelta(hours=4))
    assert len(keep(house)) == 3
    assert len(log(house)) == 3


def test_a_day_with_a_mended_drive_is_left_alone(house, high):
    finished(house.farm, house.van)
    change_journey(journey=keep(house)[0], distance=D(20), because="Odometer", at=LATER, by=house.office)
    finished(high, house.van, TUESDAY_TEN + timedelta(hours=4))
    assert keep(house) == []
    assert Journey.objects.within(house.scope).first().distance == 20


def test_a_base_that_moved_does_not_change_the_past(house):
    finished(house.farm, house.van)
    keep(house)
    house.van.base_latitude, house.van.base_name = D("55"), "New yard"
    house.van.save()
    assert keep(house) == []


def test_what_a_farm_that_was_erased_left_in_the_log_stays(house, high):
    finished(house.farm, house.van)
    finished(high, house.van, TUESDAY_TEN + timedelta(hours=4))
    keep(house)
    high.erased_at = LATER
    high.save()
    assert keep(house) == []
    assert len(log(house)) == 3


def test_a_closed_day_is_left_alone(house):
    finished(house.farm, house.van)
    lock_period(scope=house.scope, until=DAY, why="Books are done", at=LATER, by=house.owner)
    assert keep(house) == []


def test_all_days_that_are_over_are_kept_and_today_is_not(house, high):
    finished(house.farm, house.van)
    finished(high, house.van, TUESDAY_TEN + timedelta(days=1))
    stranger = make_house("Elsewhere Trimming")
    finished(stranger.farm, stranger.van)
    first = DAY - timedelta(days=30)

    def kept_at(at):
        return keep_journeys(business=house.business, first=first, last=DAY + timedelta(days=9), at=at)

    wednesday = TUESDAY_TEN + timedelta(days=1, hours=6)
    assert [kept_at(wednesday), kept_at(wednesday), kept_at(LATER)] == [2, 0, 2]
    assert not Journey.objects.within(stranger.scope).exists()
