from datetime import UTC, datetime, time, timedelta

from farms.services.set_milkings import DailyMilking, set_milkings
from tests.factories import TUESDAY_TEN, planned, under_way, wanted
from visits.selectors.done_by import done_by


def told(house, visit):
    return done_by(house.scope, visit, house.business.zone)


def test_it_is_the_next_milking_after_the_visit_begins(house):
    assert told(house, planned(house.farm, house.van)) == datetime(2026, 3, 3, 16, tzinfo=UTC)
    begun = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=1))
    assert told(house, begun) == datetime(2026, 3, 4, 16, tzinfo=UTC)


def test_it_goes_by_the_farms_own_clock_in_summer(house):
    june = planned(house.farm, house.van, datetime(2026, 6, 2, 9, tzinfo=UTC))
    assert told(house, june) == datetime(2026, 6, 2, 15, tzinfo=UTC)


def test_after_the_last_milking_of_the_day_there_is_none(house):
    assert told(house, planned(house.farm, house.van, TUESDAY_TEN + timedelta(hours=8))) is None


def test_a_farm_that_tells_no_milking_and_a_visit_without_an_hour_have_none(house):
    assert told(house, wanted(house.farm)) is None
    set_milkings(farm=house.farm, milkings=[])
    assert told(house, planned(house.farm, house.van)) is None


def test_another_farms_milking_does_not_count(house):
    set_milkings(farm=house.farm, milkings=[DailyMilking(time(5), 60), DailyMilking(time(17), 60)])
    assert told(house, planned(house.farm, house.van)) == datetime(2026, 3, 3, 17, tzinfo=UTC)
