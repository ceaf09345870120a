"""Own drives are told from finish to start of the same van on the same day, without getting away and the meal."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal

import pytest

from tests.factories import finish, make_farm, under_way
from visits.domain.arrival_windows.learn_drives import Driven
from visits.domain.travel.own_drives import DrivenGap
from visits.domain.travel.travel_figures import TravelFigures
from visits.selectors.driven_gaps import driven_gaps, gaps_of

EARLY = datetime(2026, 3, 3, 7, tzinfo=UTC)
LATER = datetime(2026, 3, 20, tzinfo=UTC)
USUAL = TravelFigures()


def test_getting_away_and_the_stretch_in_force_are_taken_off():
    own = TravelFigures(own_drives=1.25, minutes_per_leg=2)
    assert gaps_of([Driven(reckoned=27, really=32)], own) == [DrivenGap(30, 20)]


@pytest.fixture
def two_farms(house):
    return house.farm, make_farm(house.business, "High Croft", by=house.owner, latitude=Decimal("54.25"))


def day(house, farms, start=EARLY):
    """An hour at the first farm, 30 minutes on the road, an hour at the second."""
    first = finish(under_way(farms[0], house.van, start), house.trimmer, start + timedelta(hours=1))
    begun = start + timedelta(hours=1, minutes=30)
    finish(under_way(farms[1], house.van, begun), house.trimmer, begun + timedelta(hours=1))
    return first


def test_a_drive_of_the_morning_is_found_with_what_is_planned_for_it(house, two_farms):
    day(house, two_farms)
    (gap,) = driven_gaps(house.business, USUAL, LATER)
    assert gap.minutes == 28
    # 16.7 km straight x 1.35 = 22.5 km: 8 min on lanes, 20 on country roads, 2.4 on main roads.
    assert gap.planned_minutes == pytest.approx(30.4, abs=0.2)


def test_the_drive_from_one_days_last_farm_to_the_next_days_first_is_none(house, two_farms):
    start = EARLY
    for n, farm in enumerate(two_farms):
        begun = start + timedelta(days=n)
        finish(under_way(farm, house.van, begun), house.trimmer, begun + timedelta(hours=1))
    assert driven_gaps(house.business, USUAL, LATER) == []
